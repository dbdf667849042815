import { For, Show } from "solid-js";
import type { DueCoat } from "../../core/views/bench.ts";
import { useBook } from "../book-store/use-book.tsx";
import { now } from "../shell/now.ts";
import { lengthInWords, whenInWords } from "../words/time.ts";
import * as words from "../words/words.ts";
import { namedCoatOf } from "./jar-words.ts";
import type { Bench } from "./use-bench.ts";

const countedMinutes = 180;

/** What else is due, and what comes after it with its time. */
export function Next(props: { readonly bench: Bench }) {
  const book = useBook();
  const says = (coat: DueCoat) =>
    words.bench.coatShort(coat.coat, coat.patches.length, namedCoatOf(coat, props.bench.jarOf(coat)));
  const time = (ms: number) =>
    ms <= props.bench.nowMs()
      ? words.bench.nowWord
      : whenInWords(new Date(ms).toISOString(), book.zone, now());
  /** Minutes until then, where that is soon enough to count them. */
  const left = (ms: number) => {
    const minutes = Math.round((ms - props.bench.nowMs()) / 60_000);
    return minutes > 0 && minutes <= countedMinutes ? minutes : undefined;
  };
  const none = () => props.bench.next().now.length === 0 && props.bench.next().later.length === 0;
  return (
    <Show when={!none()}>
      <section class="hung next">
        <h2>{words.bench.next}</h2>
        <ul class="plain">
          <For each={props.bench.next().now}>
            {(coat) => (
              <li>
                <b>{words.bench.nowWord}</b>
                <button type="button" class="words" onClick={() => props.bench.pick(coat)}>
                  {says(coat)}
                </button>
              </li>
            )}
          </For>
          <For each={props.bench.next().later}>
            {(one) => (
              <li>
                <div>
                  <b>{time(one.atMs)}</b>
                  <Show when={left(one.atMs)}>
                    {(minutes) => <small class="soft">{words.bench.inTime(lengthInWords(minutes()))}</small>}
                  </Show>
                </div>
                <Show when={one.coat} keyed>
                  {(coat) => (
                    <button type="button" class="words" onClick={() => props.bench.pick(coat)}>
                      {says(coat)}
                    </button>
                  )}
                </Show>
                <Show when={one.jar} keyed>
                  {(jar) => (
                    <a class="row" href={`/jars/${jar.jar}`}>
                      {jar.lastSeen === null ? words.bench.lookFirst(jar.code) : words.bench.lookAt(jar.code)}
                    </a>
                  )}
                </Show>
                <Show when={one.piece} keyed>
                  {(piece) => (
                    <a class="row" href={`/pieces/${piece.piece}`}>
                      {words.bench.pieceCoat(piece.name, piece.coat, piece.surface)}
                    </a>
                  )}
                </Show>
              </li>
            )}
          </For>
        </ul>
      </section>
    </Show>
  );
}
