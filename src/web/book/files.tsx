import { createSignal, For, Show } from "solid-js";
import { notebookFile, textsInFile } from "../../core/notebook/notebook-file.ts";
import type { Adopted } from "../book-store/open-book.ts";
import { useBook } from "../book-store/use-book.tsx";
import { DoesNotFit } from "../controls/does-not-fit.tsx";
import { now } from "../shell/now.ts";
import { dayOf } from "../words/time.ts";
import * as words from "../words/words.ts";
import { exportName } from "./state.ts";

/** The whole book out as a file, and such a file in. */
export function Files() {
  const book = useBook();
  const [took, setTook] = createSignal<Adopted>();
  const [unreadable, setUnreadable] = createSignal<string>();

  function save(): void {
    const notebook = book.whole();
    const texts = notebook.ordered().map((entry) => notebook.kept(entry.id)?.text ?? "");
    const link = document.createElement("a");
    link.href = URL.createObjectURL(new Blob([notebookFile(texts)], { type: "application/json" }));
    link.download = exportName(book.name(), dayOf(now(), book.zone));
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
  }

  async function takeIn(file: File | undefined): Promise<void> {
    if (file === undefined) return;
    setTook(undefined);
    const texts = textsInFile(await file.text());
    setUnreadable(texts.ok ? undefined : texts.error.message);
    if (texts.ok) setTook(await book.imported(texts.value));
  }

  return (
    <section class="hung not-on-paper">
      <h2>{words.book.files}</h2>
      <p class="small soft">{words.book.filesSay}</p>
      <div class="stack">
        <button type="button" onClick={save}>
          {words.book.save}
        </button>
        <label class="press file">
          {words.book.takeIn}
          <input
            type="file"
            accept=".json,.jsonl,application/json"
            onChange={(event) => {
              void takeIn(event.currentTarget.files?.[0]);
              event.currentTarget.value = "";
            }}
          />
        </label>
        <Show when={took()} keyed>
          {(told) => (
            <div role="status">
              <p>{words.book.tookIn(told.added, told.known)}</p>
              <Show when={told.refused.length > 0}>
                <p>{words.book.notTaken(told.refused.length)}</p>
                <ul class="small">
                  <For each={told.refused.slice(0, 20)}>{(why) => <li>{why}</li>}</For>
                </ul>
              </Show>
            </div>
          )}
        </Show>
        <Show when={unreadable()} keyed>
          {(why) => <DoesNotFit heading={words.book.unreadable} says={words.book.unreadableSays(why)} />}
        </Show>
      </div>
    </section>
  );
}
