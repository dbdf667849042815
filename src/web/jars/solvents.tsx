import { createSignal, Show } from "solid-js";
import { type MaterialView, materialIds, materialView } from "../../core/views/material.ts";
import type { OpenBook } from "../book-store/open-book.ts";
import { Select } from "../controls/select.tsx";
import { words } from "../words/words.ts";

/** What stands on the shelf of a kind and is not used up, the newest first. */
export const onShelf = (book: OpenBook, form: MaterialView["form"]): readonly MaterialView[] =>
  book
    .look("materials", materialIds)
    .flatMap((id) => {
      const material = book.look(`material:${id}`, (read) => materialView(read, id));
      return material?.form === form && !material.usedUp ? [material] : [];
    })
    .reverse();

/** A choice off the shelf, begun with `first`, else with the only one there is. */
function useMaterial(book: OpenBook, form: "solvent" | "resin", first: () => string | undefined) {
  const list = () => onShelf(book, form);
  const [chosen, setChosen] = createSignal<string>();
  const id = () => {
    const begun = chosen() ?? first();
    const known = list().find((material) => material.id === begun);
    return known?.id ?? (list().length === 1 ? list()[0]?.id : undefined);
  };
  return { list, id, choose: setChosen, material: () => list().find((material) => material.id === id()) };
}
export type MaterialChoice = ReturnType<typeof useMaterial>;

export const useSolvent = (book: OpenBook, first: () => string | undefined = () => undefined) =>
  useMaterial(book, "solvent", first);
export const useResin = (book: OpenBook, first: () => string | undefined = () => undefined) =>
  useMaterial(book, "resin", first);

function MaterialSelect(props: {
  readonly choice: MaterialChoice;
  readonly label: string;
  readonly none: string;
  readonly missing: string;
  readonly told: boolean;
}) {
  return (
    <Show
      when={props.choice.list().length > 0}
      fallback={
        <p>
          {props.none} <a href="/shelf/new">{words.jars.toShelf}</a>
        </p>
      }
    >
      <Select
        label={props.label}
        empty={words.jars.choose}
        value={props.choice.id()}
        options={props.choice.list().map((material) => ({ value: material.id, label: material.name }))}
        onChange={props.choice.choose}
        wrong={props.told && props.choice.id() === undefined ? props.missing : undefined}
      />
    </Show>
  );
}

export const SolventSelect = (props: { readonly solvent: MaterialChoice; readonly told: boolean }) => (
  <MaterialSelect
    choice={props.solvent}
    label={words.jars.solvent}
    none={words.jars.noSolvent}
    missing={words.jars.solventMissing}
    told={props.told}
  />
);

export const ResinSelect = (props: { readonly resin: MaterialChoice; readonly told: boolean }) => (
  <MaterialSelect
    choice={props.resin}
    label={words.jars.resin}
    none={words.jars.noResin}
    missing={words.jars.resinMissing}
    told={props.told}
  />
);
