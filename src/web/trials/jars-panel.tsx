import { createMemo, createSignal, For, Show } from "solid-js";
import { strikesToCorrect } from "../../core/notebook/write-entry.ts";
import type { Trial } from "../../core/views/trial.ts";
import { useBook } from "../book-store/use-book.tsx";
import { Select } from "../controls/select.tsx";
import * as words from "../words/words.ts";
import { shelfJars } from "./shelf-jars.ts";

/** Which jar on the shelf each jar of the plan is; choosing one corrects the layout, with all else as it was. */
export function JarsPanel(props: { readonly trial: Trial }) {
  const book = useBook();
  const shelf = createMemo(() => book.look("shelf-jars", shelfJars));
  const [open, setOpen] = createSignal(false);
  const codeOf = (id: string | null) => shelf().find((j) => j.id === id)?.label ?? (id === null ? null : "…");
  function choose(jar: string, id: string): void {
    const laidOut = props.trial.laidOut;
    const entry = laidOut === null ? undefined : book.whole().entry(laidOut.entry);
    if (laidOut === null || entry === undefined) return;
    const jars = (laidOut.body.jars ?? []).map((j) => (j.jar === jar ? { ...j, batch: id } : j));
    book.write({
      kind: "trial-laid-out",
      about: [...new Set([...entry.about, id])],
      strikes: strikesToCorrect(entry),
      body: { ...laidOut.body, jars },
    });
  }
  return (
    <Show when={props.trial.jars.length > 0}>
      <section class="hung">
        <h2>{words.trials.jarsHeading}</h2>
        <Show
          when={open()}
          fallback={
            <>
              <ul class="plain">
                <For each={props.trial.jars}>
                  {(j) => <li>{words.trials.jarOf(j.jar, codeOf(j.batch) ?? words.trials.notChosen)}</li>}
                </For>
              </ul>
              <Show when={shelf().length > 0}>
                <button type="button" class="words" onClick={() => setOpen(true)}>
                  {words.trials.chooseJars}
                </button>
              </Show>
            </>
          }
        >
          <p class="small">{words.trials.jarsSays}</p>
          <For each={props.trial.jars}>
            {(j) => (
              <Select
                label={words.trials.jarName(j.jar)}
                empty={words.trials.notChosen}
                value={j.batch ?? undefined}
                options={shelf().map((s) => ({ value: s.id, label: s.label }))}
                onChange={(id) => choose(j.jar, id)}
              />
            )}
          </For>
          <button type="button" onClick={() => setOpen(false)}>
            {words.trials.done}
          </button>
        </Show>
      </section>
    </Show>
  );
}
