import { createMemo, For, Show } from "solid-js";
import { massOf, volumeOf } from "../../core/jar/amounts.ts";
import type { JarView } from "../../core/views/jar.ts";
import { useBook } from "../book-store/use-book.tsx";
import { now } from "../shell/now.ts";
import { happenedInWords } from "../words/time.ts";
import * as words from "../words/words.ts";
import { grams, millilitres } from "./jar-text.ts";

/** What happened to the jar, each with what was left then; and what was written but could not be reckoned with. */
export function JarHistory(props: { readonly jar: JarView }) {
  const book = useBook();
  const t = words.jars;
  const lines = createMemo(() => {
    const after = new Map(props.jar.steps.map((step) => [step.entry, step.after.value]));
    const entries = book.look(`jar-entries:${props.jar.id}`, (read) => {
      const uses = props.jar.uses.flatMap((use) => read.entry(use.entry) ?? []);
      const own = read.touching(props.jar.id);
      return [...own, ...uses.filter((use) => !own.includes(use))];
    });
    return entries
      .filter((entry) => t.step[entry.kind] !== undefined)
      .map((entry) => ({ entry, left: after.get(entry.id) }))
      .sort((a, b) => (a.entry.happened < b.entry.happened ? 1 : -1));
  });
  const because = (entry: string) => props.jar.unusable.find((one) => one.entry === entry);
  return (
    <details class="history">
      <summary>{t.history}</summary>
      <ol class="plain">
        <For each={lines()}>
          {({ entry, left }) => (
            <li>
              <span>
                <b>
                  {entry.id === props.jar.maker || entry.id === props.jar.id
                    ? t.step[entry.kind]
                    : t.stepIn(entry.kind, t.step[entry.kind] ?? "")}
                </b>
                <Show when={left !== undefined && massOf(left ?? {}) > 0}>
                  , {t.stepHolds(`${millilitres(volumeOf(left ?? {}))}, ${grams(massOf(left ?? {}))}`)}
                </Show>
                <span class="soft"> {happenedInWords(entry, book.zone, now())}</span>
                <Show when={because(entry.id)} keyed>
                  {(one) => <em>{t.unusable[one.reason](words.jars.byHowMuch(one.by))}</em>}
                </Show>
              </span>
              <Show when={entry.id !== props.jar.maker}>
                <button type="button" class="words not-on-paper" onClick={() => book.strike([entry.id])}>
                  {t.strike}
                </button>
              </Show>
            </li>
          )}
        </For>
      </ol>
    </details>
  );
}

/** What it was mixed from and is struck off the shelf by now: what the page no longer knows, and how to give it back. */
export function StruckOffShelf(props: { readonly jar: JarView }) {
  const t = words.jars.struckOff;
  return (
    <Show when={props.jar.struck.length > 0}>
      <section class="does-not-fit">
        <h2 class="as-h3">{t.heading(props.jar.struck.map((named) => named.name).join(", "))}</h2>
        <p>{t.says}</p>
        <a class="press" href="/book">
          {t.toBook}
        </a>
      </section>
    </Show>
  );
}

/** What stands in the way of the reckoning, in sight. */
export function NotReckoned(props: { readonly jar: JarView }) {
  const t = words.jars;
  return (
    <Show when={props.jar.unusable.length > 0}>
      <section class="does-not-fit">
        <h2 class="as-h3">{t.unusableHeading}</h2>
        <For each={props.jar.unusable}>
          {(one) => <p>{t.unusable[one.reason](words.jars.byHowMuch(one.by))}</p>}
        </For>
      </section>
    </Show>
  );
}
