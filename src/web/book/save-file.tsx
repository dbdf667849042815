import { createSignal, Show } from "solid-js";
import { notebookFile } from "../../core/notebook/notebook-file.ts";
import { photographsTold, photographText } from "../../core/notebook/photographs-in-file.ts";
import { type Saved, saveToOwnFile } from "../book-store/own-file.ts";
import { useBook } from "../book-store/use-book.tsx";
import { DoesNotFit } from "../controls/does-not-fit.tsx";
import { hasHouse } from "../has-house.ts";
import { settlePictures } from "../photographs/picture-keep.ts";
import { pictureOf } from "../photographs/picture-of.ts";
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
  const [lacking, setLacking] = createSignal(0);

  async function save(): Promise<void> {
    setSaved(undefined);
    setFailed(undefined);
    const notebook = book.whole();
    const told = photographsTold(notebook.ordered());
    const looked = await Promise.all(told.map((one) => pictureOf(book.id, one)));
    const pictures = looked.flatMap((one) => one ?? []);
    setLacking(told.length - pictures.length);
    const texts = notebook.ordered().map((entry) => notebook.kept(entry.id)?.text ?? "");
    try {
      const how = await saveToOwnFile(
        book.id,
        exportName(book.name(), dayOf(now(), book.zone)),
        notebookFile([...texts, ...pictures.map(photographText)]),
      );
      if (!hasHouse && how !== "left") {
        await book.inOwnFile();
        const names = pictures.map((one) => one.sha256);
        if (names.length > 0) await settlePictures(book.id, names, "sent");
      }
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
      <Show when={saved() !== undefined && lacking() > 0}>
        <p role="alert">{words.photographs.notSaved(lacking())}</p>
      </Show>
      <Show when={failed()} keyed>
        {(why) => <DoesNotFit heading={t.notSaved} says={t.notSavedSays(why)} />}
      </Show>
    </>
  );
}
