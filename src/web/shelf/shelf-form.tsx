import { createSignal, type JSX } from "solid-js";
import type { NotebookEntry } from "../../core/notebook/entry.ts";
import { TextField } from "../controls/text-field.tsx";
import * as words from "../words/words.ts";

const t = words.shelf;

export interface NewProps {
  readonly onWrote: (name: string, entry: string) => void;
  /** The entry that is corrected; absent for a new thing. */
  readonly old?: NotebookEntry;
}

/** A name being typed; `fallback` stands where nothing is. */
export function useName(old: string | undefined, fallback: () => string = () => "") {
  const [typed, setTyped] = createSignal(old ?? "");
  const called = () => (typed().trim() === "" ? fallback() : typed().trim());
  return { typed, setTyped, called, fallback, good: () => called() !== "" };
}

/** What every form of the shelf stands in: its fields, and the one thing to press. */
export function ShelfForm(props: {
  readonly old: NotebookEntry | undefined;
  readonly onPut: () => void;
  readonly children: JSX.Element;
}) {
  return (
    <form
      class="stack"
      onSubmit={(event) => {
        event.preventDefault();
        props.onPut();
      }}
    >
      {props.children}
      <button type="submit" class="main">
        {props.old === undefined ? t.put : t.keep}
      </button>
    </form>
  );
}

export function NameField(props: { readonly name: ReturnType<typeof useName>; readonly told: boolean }) {
  return (
    <TextField
      label={t.name}
      value={props.name.typed()}
      hint={props.name.fallback() === "" ? t.nameHint : props.name.fallback()}
      wrong={props.told && !props.name.good() ? t.nameMissing : undefined}
      onInput={props.name.setTyped}
    />
  );
}
