import { createSignal, Show } from "solid-js";
import { surfaceWorks } from "../../core/notebook/kinds/bench.ts";
import type { DueCoat, DuePatch } from "../../core/views/bench.ts";
import { useBook } from "../book-store/use-book.tsx";
import { Select } from "../controls/select.tsx";
import { TextField } from "../controls/text-field.tsx";
import { UndoStrip } from "../controls/undo-strip.tsx";
import { words } from "../words/words.ts";
import { boardIds, targetsOf } from "./state.ts";

type How = (typeof surfaceWorks)[number];

/** Sanding, de-nibbing and the like, on the patches that are chosen. */
export function SurfaceWork(props: { readonly coat: DueCoat; readonly patches: readonly DuePatch[] }) {
  const book = useBook();
  const [how, setHow] = createSignal<How>("de-nibbed");
  const [using, setUsing] = createSignal("");
  const [wrote, setWrote] = createSignal<{ readonly id: string; readonly says: string }>();
  const codes = () => props.patches.map((p) => p.code).join(" ");
  const [told, setTold] = createSignal(false);
  function write(): void {
    setTold(props.patches.length === 0);
    if (props.patches.length === 0) return;
    const id = book.write({
      kind: "surface-worked",
      about: [props.coat.trial, ...boardIds(props.patches)],
      body: {
        targets: targetsOf(props.coat.trial, props.patches),
        how: how(),
        ...(using().trim() === "" ? {} : { with: using().trim() }),
      },
    });
    setWrote({ id, says: words.bench.surfaceWrote(words.bench.surfaceHows[how()], codes()) });
  }
  function undo(): void {
    const last = wrote();
    if (last !== undefined) book.strike([last.id]);
    setWrote(undefined);
  }
  return (
    <details>
      <summary>{words.bench.surface}</summary>
      <div class="stack">
        <p class="small">{words.bench.surfaceOn(codes())}</p>
        <Select
          label={words.bench.surfaceHow}
          value={how()}
          options={surfaceWorks.map((value) => ({ value, label: words.bench.surfaceHows[value] }))}
          onChange={setHow}
        />
        <TextField
          label={words.bench.surfaceWith}
          value={using()}
          onInput={setUsing}
          hint={words.bench.surfaceWithHint}
        />
        <Show when={told()}>
          <p role="alert">{words.bench.noneChosen}</p>
        </Show>
        <button type="button" class="wide" onClick={write}>
          {words.bench.surfaceAct}
        </button>
        <Show when={wrote()}>{(last) => <UndoStrip says={last().says} onUndo={undo} />}</Show>
      </div>
    </details>
  );
}
