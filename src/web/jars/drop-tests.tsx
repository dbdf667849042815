import { For, Show } from "solid-js";
import type { JarView } from "../../core/views/jar.ts";
import { useBook } from "../book-store/use-book.tsx";
import { now } from "../shell/now.ts";
import { dayInWords, lengthInWords } from "../words/time.ts";
import * as words from "../words/words.ts";

/** Longest that a bar shows, minutes: four hours, when a drop is to be hard by common practice. */
const most = 240;
const bar = 72;

/** Every drop on glass, the newest first: a jar that takes longer from test to test is going. */
export function DropTests(props: { readonly jar: JarView }) {
  const book = useBook();
  const t = words.jars.dropTests;
  const tests = () => [...props.jar.dropTests].reverse();
  return (
    <Show when={tests().length > 0}>
      <section class="hung stack-small">
        <h2>{t.heading}</h2>
        <ul class="plain drop-tests">
          <For each={tests()}>
            {(test) => (
              <li>
                <span>{dayInWords(test.at, book.zone, now())}</span>
                <b>{words.jars.acts.dropTest.results[test.result]}</b>
                <Show when={test.hardAfterMinutes} keyed fallback={<span />}>
                  {(minutes) => (
                    <span class="drop-bar">
                      <svg width={bar} height="14" viewBox={`0 0 ${bar} 14`} aria-hidden="true">
                        <rect
                          x="1"
                          y="2"
                          width={Math.max(2, Math.min(1, minutes / most) * (bar - 2))}
                          height="10"
                          class="bar"
                        />
                      </svg>
                      {lengthInWords(minutes)}
                    </span>
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
