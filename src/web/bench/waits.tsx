import { createSignal, Show } from "solid-js";
import { waitDefaults, waitMinutes } from "../../core/views/waits.ts";
import { useBook } from "../book-store/use-book.tsx";
import { TextField } from "../controls/text-field.tsx";
import { UndoStrip } from "../controls/undo-strip.tsx";
import { lengthInWords } from "../words/time.ts";
import * as words from "../words/words.ts";
import { readWait } from "./state.ts";
import type { Bench } from "./use-bench.ts";

/** The wait after the way of coating in question, and setting it to one's own. */
export function Waits(props: { readonly bench: Bench }) {
  const book = useBook();
  const [typed, setTyped] = createSignal<string>();
  const [told, setTold] = createSignal(false);
  const [wrote, setWrote] = createSignal<string>();
  const method = () => props.bench.methodNow();
  /** What the last coat on the patches in question waits by. */
  const shown = () => {
    const layers = (props.bench.open()?.patches ?? []).flatMap(({ lastLayer }) => lastLayer ?? []);
    return layers.map((layer) => props.bench.waits.answerFor(layer)).find((answer) => answer !== undefined);
  };
  const minutes = () => book.look(`wait:${method()}`, (read) => waitMinutes(read, method()));
  const text = () => typed() ?? String(minutes());
  const wrong = () => (told() && readWait(text()) === undefined ? words.bench.waitWrong : undefined);
  const done = () => words.bench.methodDone[method()];
  function keep(): void {
    const value = readWait(text());
    setTold(true);
    if (value === undefined) return;
    const { name } = waitDefaults[method()];
    setWrote(book.write({ kind: "default-changed", body: { name, value, was: minutes() } }));
    setTyped(undefined);
  }
  function undo(): void {
    const id = wrote();
    if (id !== undefined) book.strike([id]);
    setWrote(undefined);
  }
  return (
    <details class="not-on-paper">
      <summary>{words.bench.waits}</summary>
      <div class="stack">
        <Show when={shown()}>
          {(answer) => (
            <p>
              <b>{words.bench.waitShown(lengthInWords(answer().seconds / 60))}</b>{" "}
              {words.drying.coat.shown[answer().shown]}
            </p>
          )}
        </Show>
        <p class="small">{words.bench.waitsSay(lengthInWords(waitDefaults[method()].value), done())}</p>
        <TextField
          label={words.bench.waitField(done())}
          inputMode="numeric"
          value={text()}
          onInput={setTyped}
          wrong={wrong()}
          onEnter={keep}
        />
        <button type="button" class="wide" onClick={keep}>
          {words.bench.waitAct}
        </button>
        <Show when={wrote()}>
          <UndoStrip says={words.bench.waitKept(lengthInWords(minutes()))} onUndo={undo} />
        </Show>
      </div>
    </details>
  );
}
