import { createSignal, type JSX, Show } from "solid-js";
import type { DuePatch } from "../../core/views/bench.ts";
import { useBook } from "../book-store/use-book.tsx";
import { UndoStrip } from "../controls/undo-strip.tsx";
import * as words from "../words/words.ts";

interface Written {
  readonly id: string;
  readonly says: string;
}

/** Something else that may be done to the chosen patches, folded away, with its undo in the same place. */
export function FoldedAct(props: {
  readonly title: string;
  readonly says: string;
  readonly act: string;
  readonly patches: readonly DuePatch[];
  /** Writes the entry and says what it was; nothing when a field is still missing. */
  readonly onWrite: () => Written | undefined;
  readonly children: JSX.Element;
}) {
  const book = useBook();
  const [told, setTold] = createSignal(false);
  const [wrote, setWrote] = createSignal<Written>();
  function write(): void {
    const noneChosen = props.patches.length === 0;
    setTold(noneChosen);
    if (!noneChosen) setWrote((before) => props.onWrite() ?? before);
  }
  function undo(last: Written): void {
    book.strike([last.id]);
    setWrote(undefined);
  }
  return (
    <details>
      <summary>{props.title}</summary>
      <div class="stack">
        <p class="small">{props.says}</p>
        {props.children}
        <Show when={told()}>
          <p role="alert">{words.bench.noneChosen}</p>
        </Show>
        <button type="button" class="wide" onClick={write}>
          {props.act}
        </button>
        <Show when={wrote()}>{(last) => <UndoStrip says={last().says} onUndo={() => undo(last())} />}</Show>
      </div>
    </details>
  );
}

export const codesOf = (patches: readonly DuePatch[]): string => patches.map((p) => p.code).join(" ");
