import { createSignal, Show } from "solid-js";
import { methods } from "../../core/notebook/kinds/bench.ts";
import { useBook } from "../book-store/use-book.tsx";
import { Choice } from "../controls/choice.tsx";
import { TextField } from "../controls/text-field.tsx";
import { now } from "../shell/now.ts";
import { whenInWords } from "../words/time.ts";
import * as words from "../words/words.ts";
import { agoChoices } from "./state.ts";
import type { Bench } from "./use-bench.ts";

/** For a coat that was given earlier, or went on another way. */
export function Otherwise(props: { readonly bench: Bench }) {
  const book = useBook();
  const [typed, setTyped] = createSignal("");
  const wrong = () =>
    typed() !== "" && props.bench.instant() === undefined ? words.bench.clockWrong(typed()) : undefined;
  const ago = () => {
    const when = props.bench.when();
    return "ago" in when ? String(when.ago) : undefined;
  };
  const typeClock = (text: string) => {
    setTyped(text);
    props.bench.setWhen(text.trim() === "" ? { ago: 0 } : { clock: text });
  };
  const takeAgo = (minutes: string) => {
    setTyped("");
    props.bench.setWhen({ ago: Number(minutes) });
  };
  return (
    <Show when={props.bench.written() === undefined}>
      <details class="otherwise not-on-paper">
        <summary>{words.bench.otherwiseThan(words.bench.methodDone[props.bench.methodNow()])}</summary>
        <div class="stack">
          <Choice
            label={words.bench.when}
            value={ago()}
            options={agoChoices.map((minutes) => ({
              value: String(minutes),
              label: minutes === 0 ? words.bench.now : words.bench.ago(minutes),
            }))}
            onChange={takeAgo}
          />
          <TextField
            label={words.bench.clock}
            inputMode="numeric"
            value={typed()}
            onInput={typeClock}
            hint={words.bench.clockHint}
            wrong={wrong()}
          />
          <Show when={ago() !== "0" && props.bench.instant()} keyed>
            {(at) => <p>{words.bench.atTime(whenInWords(at, book.zone, now()))}</p>}
          </Show>
          <Choice
            label={words.bench.how}
            value={props.bench.methodNow()}
            options={methods.map((value) => ({ value, label: words.bench.methods[value] }))}
            onChange={props.bench.setMethod}
          />
        </div>
      </details>
    </Show>
  );
}
