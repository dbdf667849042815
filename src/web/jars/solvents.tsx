import { createSignal, Show } from "solid-js";
import { type MaterialView, materialIds, materialView } from "../../core/views/material.ts";
import type { OpenBook } from "../book-store/open-book.ts";
import { Select } from "../controls/select.tsx";
import * as words from "../words/words.ts";

/** What stands on the shelf of a kind and is not used up, the newest first. */
export const onShelf = (book: OpenBook, form: MaterialView["form"]): readonly MaterialView[] =>
  book
    .look("materials", materialIds)
    .flatMap((id) => {
      const material = book.look(`material:${id}`, (read) => materialView(read, id));
      return material?.form === form && !material.usedUp ? [material] : [];
    })
    .reverse();

/** An alcohol off the shelf, begun with `first`, else with the only one there is. */
export function useSolvent(book: OpenBook, first: () => string | undefined) {
  const list = () => onShelf(book, "solvent");
  const [chosen, setChosen] = createSignal<string>();
  const id = () => {
    const begun = chosen() ?? first();
    const known = list().find((material) => material.id === begun);
    return known?.id ?? (list().length === 1 ? list()[0]?.id : undefined);
  };
  return { list, id, choose: setChosen, material: () => list().find((material) => material.id === id()) };
}

export function SolventSelect(props: {
  readonly solvent: ReturnType<typeof useSolvent>;
  readonly told: boolean;
}) {
  const t = words.jars;
  return (
    <Show
      when={props.solvent.list().length > 0}
      fallback={
        <p>
          {t.noSolvent} <a href="/shelf/new?what=solvent">{t.toShelf}</a>
        </p>
      }
    >
      <Select
        label={t.solvent}
        empty={t.choose}
        value={props.solvent.id()}
        options={props.solvent.list().map((material) => ({ value: material.id, label: material.name }))}
        onChange={props.solvent.choose}
        wrong={props.told && props.solvent.id() === undefined ? t.solventMissing : undefined}
      />
    </Show>
  );
}
