import { createSignal, For, Show } from "solid-js";
import type { Trial } from "../../core/views/trial.ts";
import { useBook } from "../book-store/use-book.tsx";
import { Choice } from "../controls/choice.tsx";
import { TextField } from "../controls/text-field.tsx";
import { dayInWords } from "../words/time.ts";
import * as words from "../words/words.ts";
import { levelsTried } from "./trial-state.ts";

const none = "\u0000none";

/** The end of a trial: what was chosen of each thing that varied, and why. */
export function ClosePanel(props: { readonly trial: Trial }) {
  const book = useBook();
  const [open, setOpen] = createSignal(false);
  const [chosen, setChosen] = createSignal<Readonly<Record<string, string>>>({});
  const [why, setWhy] = createSignal("");
  const close = () => {
    const picked = Object.fromEntries(Object.entries(chosen()).filter(([, level]) => level !== none));
    book.write({
      kind: "trial-closed",
      about: [props.trial.id],
      body: {
        ...(Object.keys(picked).length === 0 ? {} : { chosen: picked }),
        ...(why().trim() === "" ? {} : { why: why().trim() }),
      },
    });
  };
  return (
    <section class="hung">
      <Show
        when={props.trial.closed === null}
        fallback={
          <Show when={props.trial.closed} keyed>
            {(closed) => (
              <>
                <h2>{words.trials.states.closed}</h2>
                <p>
                  <b>{Object.values(closed.body.chosen ?? {}).join(", ")}</b>
                </p>
                <p>{closed.body.why}</p>
                <p class="small soft">{words.trials.closedSaid(dayInWords(closed.at, book.zone))}</p>
              </>
            )}
          </Show>
        }
      >
        <h2>{words.trials.closeHeading}</h2>
        <p>{words.trials.closeSays}</p>
        <Show
          when={open()}
          fallback={
            <button type="button" onClick={() => setOpen(true)}>
              {words.trials.closeHeading}
            </button>
          }
        >
          <For each={levelsTried(props.trial)}>
            {({ factor, levels }) => (
              <Choice
                label={words.trials.chosen(factor)}
                options={[
                  ...levels.map((level) => ({ value: level, label: level })),
                  { value: none, label: words.trials.noneChosen },
                ]}
                value={chosen()[factor] ?? none}
                onChange={(level) => setChosen({ ...chosen(), [factor]: level })}
              />
            )}
          </For>
          <TextField label={words.trials.whyNote} value={why()} onInput={setWhy} />
          <button type="button" onClick={close}>
            {words.trials.close}
          </button>
        </Show>
      </Show>
    </section>
  );
}
