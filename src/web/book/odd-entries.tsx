import { createMemo, For, Show } from "solid-js";
import { readKeptEntry } from "../../core/notebook/parse-entry.ts";
import type { NotebookReport } from "../../core/notebook/reports.ts";
import type { RefusedEntry } from "../book-store/outbox.ts";
import { useBook } from "../book-store/use-book.tsx";
import * as words from "../words/words.ts";
import { saying } from "./lines.ts";

/** What the house did not take, in words; it is kept here and can be sent again. */
export function RefusedEntries() {
  const book = useBook();
  const says = (one: RefusedEntry) => {
    const kept = readKeptEntry(one.text);
    return kept.ok ? saying(book.whole(), kept.value) : one.text;
  };
  return (
    <Show when={book.refused().length > 0}>
      <section class="does-not-fit">
        <h2>{words.book.refused}</h2>
        <p>{words.book.refusedSays}</p>
        <For each={book.refused()}>
          {(one) => (
            <div class="refused">
              <p>
                <b>{says(one)}</b> {one.message}
              </p>
              <button type="button" onClick={() => book.sendAgain(one.id)}>
                {words.book.sendAgain}
              </button>
            </div>
          )}
        </For>
      </section>
    </Show>
  );
}

/** What a person should know of the book itself: gaps, rings, numbers given twice. */
export function Reports() {
  const book = useBook();
  const said = createMemo(() => book.whole().reports.flatMap((report) => reportSays(report)));
  return (
    <Show when={said().length > 0}>
      <section class="hung">
        <h2>{words.book.reports}</h2>
        <ul class="small">
          <For each={said()}>{(says) => <li>{says}</li>}</For>
        </ul>
      </section>
    </Show>
  );
}

/** Entries that are not understood say so on their own line. */
function reportSays(report: NotebookReport): readonly string[] {
  if ("about" in report) return [report.message];
  if (report.code === "gap")
    return [words.book.report.gap(report.device.slice(-4), report.to - report.from + 1)];
  if (report.code === "same-number") return [words.book.report.sameNumber];
  if (report.code === "strike-ring") return [words.book.report.ring];
  return report.code === "link-ring" ? [words.book.report.linkRing] : [];
}
