import { createSignal, For, Show } from "solid-js";
import { isToTheMinute } from "../../core/notebook/entry-time.ts";
import type { Body } from "../../core/notebook/kinds/all.ts";
import { asItHappened, strikesToCorrect } from "../../core/notebook/write-entry.ts";
import type { FilmCoat } from "../../core/views/film.ts";
import type { OpenBook } from "../book-store/open-book.ts";
import { useBook } from "../book-store/use-book.tsx";
import { UndoStrip } from "../controls/undo-strip.tsx";
import { now } from "../shell/now.ts";
import { happenedInWords } from "../words/time.ts";
import * as words from "../words/words.ts";
import type { CoatPage } from "./coat/state.ts";

type Went = NonNullable<Body<"layer-applied">["went"]>;
const t = words.drying.ready;

/** Says of a layer how it went, as a correction of its entry: everything else stays as it was written. */
export function sayHowItWent(book: OpenBook, layer: string, went: Went): string | undefined {
  const entry = book.whole().making(layer);
  if (entry?.kind !== "layer-applied") return undefined;
  const body = entry.body as Body<"layer-applied">; // the kind says so
  return book.write({
    kind: "layer-applied",
    about: [...new Set([...entry.about, book.whole().thingOf(entry)])],
    strikes: strikesToCorrect(entry),
    ...asItHappened(entry),
    body: { ...body, went },
  });
}

export const howItWent = (book: OpenBook, layer: string): Went | undefined =>
  book.look(`went:${layer}`, (read) => (read.making(layer)?.body as Body<"layer-applied"> | undefined)?.went);

/** One question of a layer with its answers, and the undo in the same place. */
export function AskHowItWent(props: {
  readonly layer: string;
  readonly question: string;
  readonly answers: readonly Went[];
}) {
  const book = useBook();
  const [wrote, setWrote] = createSignal<string>();
  const said = () => howItWent(book, props.layer);
  const say = (went: Went) => setWrote(sayHowItWent(book, props.layer, went));
  function undo(): void {
    const id = wrote();
    if (id !== undefined) book.strike([id]);
    setWrote(undefined);
  }
  return (
    <div class="stack asked">
      <h2>{props.question}</h2>
      <Show
        when={wrote()}
        fallback={
          // biome-ignore lint/a11y/useSemanticElements: buttons, each of which writes; no fields to fill in
          <div class="side-by-side" role="group" aria-label={props.question}>
            <For each={props.answers}>
              {(went) => (
                <button type="button" aria-pressed={said() === went} onClick={() => say(went)}>
                  {t.answers[went]}
                </button>
              )}
            </For>
          </div>
        }
      >
        <UndoStrip says={t.wrote[said() ?? "well"]} onUndo={undo} />
      </Show>
    </div>
  );
}

/** Was the coat ready when the next went on? Asked once there is one; until then it is said when it will be. */
export function WasReady(props: { readonly coat: CoatPage }) {
  const book = useBook();
  /** When the next one went on; how long after is said only where both are known to the minute. */
  const nextSays = (after: FilmCoat) => {
    const next = book.look(`entry:${after.entry}`, (read) => read.entry(after.entry));
    if (next === undefined) return "";
    const minutes = (Date.parse(after.at) - Date.parse(props.coat.layer.happened)) / 60_000;
    const exact = isToTheMinute(next) && isToTheMinute(props.coat.layer);
    const waited = exact ? words.drying.coat.waited(Math.round(minutes)) : undefined;
    return t.nextWent(happenedInWords(next, book.zone, now()), waited);
  };
  return (
    <>
      <Show
        when={props.coat.after}
        fallback={
          <>
            <h2>{t.question}</h2>
            <p class="soft">{t.notYet}</p>
          </>
        }
      >
        {(after) => (
          <>
            <AskHowItWent
              layer={after().entry}
              question={t.question}
              answers={["dragged", "well", "too soon"]}
            />
            <p class="soft small">{nextSays(after())}</p>
          </>
        )}
      </Show>
      <AskHowItWent layer={props.coat.layer.id} question={t.white} answers={["whitened"]} />
    </>
  );
}
