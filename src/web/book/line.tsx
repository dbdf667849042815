import { Show } from "solid-js";
import { useBook } from "../book-store/use-book.tsx";
import { writer } from "../book-store/writer.ts";
import { now } from "../shell/now.ts";
import { clock, dayInWords } from "../words/time.ts";
import * as words from "../words/words.ts";
import type { BookLine } from "./lines.ts";

/** One entry: when, what it says, and striking it out or bringing it back. */
export function Line(props: { readonly line: BookLine }) {
  const book = useBook();
  const time = () => {
    const hour = clock(props.line.happened, book.zone);
    if (props.line.knownTo === "minute") return hour;
    if (props.line.knownTo === "hour") return words.book.about(hour);
    return props.line.knownTo === "day" ? "" : words.book.sometime;
  };
  const canStrike = () =>
    props.line.state === "live" && props.line.kind !== "struck" && props.line.kind !== "notebook-begun";
  const written = () =>
    `${dayInWords(props.line.recorded, book.zone, now())}, ${clock(props.line.recorded, book.zone)}`;
  return (
    <li class="line" classList={{ quiet: props.line.kind === "struck" || props.line.state === "withdrawn" }}>
      <details>
        <summary>
          <span class="when">{time()}</span>
          <span class="says">
            <Show when={props.line.state === "struck"} fallback={props.line.says}>
              <s>{props.line.says}</s>
            </Show>
            <Show when={props.line.who !== null && props.line.who !== writer()}>
              <small class="soft"> {props.line.who}</small>
            </Show>
            <Show when={props.line.remembered || props.line.writtenLater}>
              <small class="soft"> {props.line.remembered ? words.book.remembered : words.book.later}</small>
            </Show>
          </span>
        </summary>
        <div class="more">
          <p class="small soft">
            {words.book.writtenOn(written(), props.line.by, props.line.device.slice(-4), props.line.seq)}
          </p>
          <Show when={canStrike()}>
            <button
              type="button"
              aria-label={words.book.strikeThis(props.line.says)}
              onClick={() => book.strike([props.line.id])}
            >
              {words.book.strike}
            </button>
          </Show>
          <Show when={props.line.state === "struck"}>
            <button
              type="button"
              aria-label={words.book.restoreThis(props.line.says)}
              onClick={() => book.strike(props.line.struckBy)}
            >
              {words.book.restore}
            </button>
          </Show>
        </div>
      </details>
    </li>
  );
}
