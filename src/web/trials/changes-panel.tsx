import { createSignal, For, Show } from "solid-js";
import type { Trial } from "../../core/views/trial.ts";
import { useBook } from "../book-store/use-book.tsx";
import { TextField } from "../controls/text-field.tsx";
import { UndoStrip } from "../controls/undo-strip.tsx";
import * as words from "../words/words.ts";

/** What was done otherwise than planned once the trial had begun, with why, and before or after the key was opened. */
export function ChangesPanel(props: { readonly trial: Trial }) {
  const book = useBook();
  const [what, setWhat] = createSignal("");
  const [why, setWhy] = createSignal("");
  const [told, setTold] = createSignal(false);
  const [wrote, setWrote] = createSignal<string>();
  const missing = (text: string) => (told() && text.trim() === "" ? words.trials.faults.missing : undefined);
  function write(): void {
    setTold(true);
    if (what().trim() === "" || why().trim() === "") return;
    const entry = book.write({
      kind: "trial-changed",
      about: [props.trial.id],
      body: { what: what().trim(), why: why().trim(), keyOpen: props.trial.key.state === "open" },
    });
    setWrote(entry);
    setWhat("");
    setWhy("");
    setTold(false);
  }
  function undo(): void {
    const entry = wrote();
    if (entry !== undefined) book.strike([entry]);
    setWrote(undefined);
  }
  return (
    <section class="hung">
      <Show when={props.trial.changes.length > 0}>
        <h2>{words.trials.changesHeading}</h2>
        <For each={props.trial.changes}>
          {(change) => (
            <p>
              <b>{change.what}</b> {words.trials.changeWhy(change.why, change.keyOpen)}
            </p>
          )}
        </For>
      </Show>
      <details>
        <summary>{words.trials.changeAdd}</summary>
        <div class="stack">
          <TextField
            label={words.trials.changeWhat}
            value={what()}
            onInput={setWhat}
            wrong={missing(what())}
          />
          <TextField label={words.trials.leaveOutWhy} value={why()} onInput={setWhy} wrong={missing(why())} />
          <Show
            when={wrote()}
            fallback={
              <button type="button" onClick={write}>
                {words.trials.judgeNext}
              </button>
            }
          >
            <UndoStrip says={words.trials.wroteChange} onUndo={undo} />
          </Show>
        </div>
      </details>
    </section>
  );
}
