import { createMemo, For, Show } from "solid-js";
import type { Body } from "../../core/notebook/kinds/all.ts";
import { asItHappened, strikesToCorrect } from "../../core/notebook/write-entry.ts";
import { type DoubledCoat, doubledCoats } from "../../core/views/doubled-coats.ts";
import { useBook } from "../book-store/use-book.tsx";
import { now } from "../shell/now.ts";
import { whenInWords } from "../words/time.ts";
import * as words from "../words/words.ts";
import type { Bench } from "./use-bench.ts";

/** Two devices say that the same coat was given: both are kept, and it is asked which happened. */
export function Twice(props: { readonly bench: Bench }) {
  const book = useBook();
  const doubled = createMemo(() =>
    props.bench
      .trials()
      .flatMap((trial) => book.look(`doubled:${trial.id}`, (read) => doubledCoats(read, trial.id))),
  );
  const time = (at: string) => whenInWords(at, book.zone, now());
  /** Whose it was, where that was said, and on which device it was written. */
  const where = ({ who, device }: DoubledCoat["entries"][number]) =>
    `${who === null ? "" : `${who}, `}${device === book.device ? words.bench.onThisDevice : words.bench.onAnother}`;
  /** Both went on: the later one is no coat of the plan. */
  function both(one: DoubledCoat): void {
    const entry = book.whole().entry(one.entries.at(-1)?.entry ?? "");
    if (entry === undefined) return;
    const { planned: _, ...body } = entry.body as Body<"layer-applied">;
    book.write({
      kind: "layer-applied",
      about: entry.about,
      strikes: strikesToCorrect(entry),
      ...asItHappened(entry),
      body: { ...body, outsidePlan: words.bench.twiceWhy(one.coat) },
    });
  }
  return (
    <For each={doubled()}>
      {(one) => (
        <section class="does-not-fit twice">
          <h2>{words.bench.twice(one.coat, one.codes)}</h2>
          <p>
            {one.entries.map((each) => words.bench.twiceAt(time(each.at), where(each))).join(", ")}.{" "}
            {words.bench.twiceSays}
          </p>
          <div class="side-by-side">
            <For each={one.entries}>
              {(each) => (
                <button type="button" onClick={() => book.strike([each.entry])}>
                  {words.bench.strikeThat(time(each.at), where(each))}
                </button>
              )}
            </For>
            <Show when={one.entries.length === 2}>
              <button type="button" onClick={() => both(one)}>
                {words.bench.bothHappened}
              </button>
            </Show>
          </div>
        </section>
      )}
    </For>
  );
}
