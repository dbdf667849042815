import { createSignal, For, Show } from "solid-js";
import { partsOfFile } from "../../core/notebook/photographs-in-file.ts";
import type { Adopted } from "../book-store/open-book.ts";
import { useBook } from "../book-store/use-book.tsx";
import { DoesNotFit } from "../controls/does-not-fit.tsx";
import { Lacking } from "../photographs/lacking.tsx";
import { type TakenIn, takenIn } from "../photographs/taken-in.ts";
import * as words from "../words/words.ts";
import { SaveFile } from "./save-file.tsx";

/** The whole book out as a file, and such a file in. */
export function Files() {
  const book = useBook();
  const [took, setTook] = createSignal<Adopted>();
  const [pictures, setPictures] = createSignal<TakenIn>();
  const [unreadable, setUnreadable] = createSignal<string>();

  async function takeIn(file: File | undefined): Promise<void> {
    if (file === undefined) return;
    setTook(undefined);
    const parts = partsOfFile(await file.text());
    setUnreadable(parts.ok ? undefined : parts.error.message);
    if (!parts.ok) return;
    setPictures(await takenIn(book.id, parts.value));
    setTook(await book.imported(parts.value.texts));
  }

  return (
    <section class="hung not-on-paper">
      <h2>{words.book.files}</h2>
      <p class="small soft">{words.book.filesSay}</p>
      <div class="stack">
        <SaveFile />
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
              <Show when={pictures()} keyed>
                {({ kept, lacking }) => (
                  <>
                    <Show when={kept > 0}>
                      <p>{words.photographs.took(kept)}</p>
                    </Show>
                    <Lacking lacking={lacking} />
                  </>
                )}
              </Show>
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
