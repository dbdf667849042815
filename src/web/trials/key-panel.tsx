import { createResource, createSignal, Show } from "solid-js";
import type { Trial } from "../../core/views/trial.ts";
import { useBook } from "../book-store/use-book.tsx";
import { DoesNotFit } from "../controls/does-not-fit.tsx";
import { dayInWords } from "../words/time.ts";
import * as words from "../words/words.ts";
import { KeyOpener } from "./key-opener.tsx";
import { openerOf } from "./open-key.ts";
import { unjudged } from "./trial-state.ts";

/** Where the key is, and opening it for everyone: once, and for good. */
export function KeyPanel(props: { readonly trial: Trial }) {
  const book = useBook();
  const [opener] = createResource(() => props.trial, openerOf);
  const [asked, setAsked] = createSignal(false);
  const left = () => unjudged(props.trial).length;

  function mayOpen(): boolean {
    const may = left() === 0 || asked();
    setAsked(true);
    return may;
  }

  return (
    <section class="hung">
      <Show
        when={props.trial.key.state !== "open"}
        fallback={
          <>
            <h2>{words.trials.keyWord.open}</h2>
            <p>{words.trials.keyOpened(dayInWords(props.trial.key.openedAt ?? "", book.zone))}</p>
          </>
        }
      >
        <h2>{words.trials.openKeyHeading}</h2>
        <Show when={props.trial.key.state === "wrong"}>
          <DoesNotFit heading={words.trials.keyWrong} />
        </Show>
        <Show when={opener() !== "elsewhere"} fallback={<p>{words.trials.keyIsElsewhere}</p>}>
          <p>{words.trials.openKeySays}</p>
          <Show when={left() > 0}>
            <p>
              <b>{words.trials.openKeyLeft(left())}</b>
            </p>
          </Show>
          <KeyOpener
            trial={props.trial}
            opener={opener()}
            label={asked() && left() > 0 ? words.trials.openKeyAnyway : words.trials.openKey}
            mayOpen={mayOpen}
            onOpened={(key) => book.write({ kind: "key-opened", about: [props.trial.id], body: { key } })}
          />
        </Show>
      </Show>
    </section>
  );
}
