import { createSignal, Show } from "solid-js";
import { notebookFile } from "../../core/notebook/notebook-file.ts";
import { type Saved, saveToOwnFile } from "../book-store/own-file.ts";
import { useBook } from "../book-store/use-book.tsx";
import { DoesNotFit } from "../controls/does-not-fit.tsx";
import { hasHouse } from "../has-house.ts";
import { now } from "../shell/now.ts";
import { dayOf } from "../words/time.ts";
import * as words from "../words/words.ts";
import { exportName } from "./state.ts";

const t = words.ownFile;

/** Saves the whole notebook into the person's own file. */
export function SaveFile() {
  const book = useBook();
  const [saved, setSaved] = createSignal<Saved>();
  const [failed, setFailed] = createSignal<string>();

  async function save(): Promise<void> {
    setSaved(undefined);
    setFailed(undefined);
    const notebook = book.whole();
    const texts = notebook.ordered().map((entry) => notebook.kept(entry.id)?.text ?? "");
    try {
      const how = await saveToOwnFile(
        book.id,
        exportName(book.name(), dayOf(now(), book.zone)),
        notebookFile(texts),
      );
      if (!hasHouse && how !== "left") await book.inOwnFile();
      setSaved(how);
    } catch (error) {
      if (!(error instanceof DOMException)) throw error;
      setFailed(error.message);
    }
  }

  return (
    <>
      <button type="button" onClick={() => void save()}>
        {words.book.save}
      </button>
      <p role="status">{saved() === undefined ? "" : t.saved[saved() as Saved]}</p>
      <Show when={failed()} keyed>
        {(why) => <DoesNotFit heading={t.notSaved} says={t.notSavedSays(why)} />}
      </Show>
    </>
  );
}
