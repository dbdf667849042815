import { createSignal, For, Show } from "solid-js";
import { type NotebookInFile, notebookInFile } from "../../core/notebook/notebook-in-file.ts";
import { DoesNotFit } from "../controls/does-not-fit.tsx";
import { Lacking } from "../photographs/lacking.tsx";
import * as words from "../words/words.ts";

const t = words.ownFile;
const shownRefused = 20;

/** A notebook out of a file. One that is whole is opened at once; of another it is said first what is missing. */
export function OpenFile(props: { readonly onOpen: (file: NotebookInFile) => void }) {
  const [found, setFound] = createSignal<NotebookInFile>();
  const [unreadable, setUnreadable] = createSignal<string>();

  async function look(file: File | undefined): Promise<void> {
    setFound(undefined);
    setUnreadable(undefined);
    if (file === undefined) return;
    const read = notebookInFile(await file.text());
    if (!read.ok) setUnreadable(read.error.message);
    else if (read.value.refused.length + read.value.missing + read.value.lacking.length > 0)
      setFound(read.value);
    else props.onOpen(read.value);
  }

  return (
    <section class="hung stack">
      <h2>{t.openHeading}</h2>
      <p>{t.openSays}</p>
      <label class="press file">
        {t.open}
        <input
          type="file"
          accept=".json,.jsonl,application/json"
          onChange={(event) => {
            void look(event.currentTarget.files?.[0]);
            event.currentTarget.value = "";
          }}
        />
      </label>
      <Show when={unreadable()} keyed>
        {(why) => <DoesNotFit heading={t.unreadable} says={t.unreadableSays(why)} />}
      </Show>
      <Show when={found()} keyed>
        {(file) => (
          <div class="does-not-fit" role="alert">
            <p>{t.found(file.name, file.entries.length)}</p>
            <Show when={file.missing > 0}>
              <p>{t.missing(file.missing)}</p>
            </Show>
            <Show when={file.refused.length > 0}>
              <p>{t.refused(file.refused.length)}</p>
              <ul class="small">
                <For each={file.refused.slice(0, shownRefused)}>{(why) => <li>{why}</li>}</For>
              </ul>
            </Show>
            <Lacking lacking={file.lacking} />
            <button type="button" onClick={() => props.onOpen(file)}>
              {t.openAnyway}
            </button>
          </div>
        )}
      </Show>
    </section>
  );
}
