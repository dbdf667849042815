import { openDB } from "idb";
import { saveFile } from "../controls/save-file.ts";
import { hasHouse } from "../has-house.ts";

/** What browsers that write to files offer beside the standard's types. */
interface FilePicker {
  showSaveFilePicker?: (options: {
    readonly suggestedName: string;
    readonly types: readonly { readonly accept: Readonly<Record<string, readonly string[]>> }[];
  }) => Promise<OwnFile>;
}
type OwnFile = FileSystemFileHandle & {
  requestPermission?: (how: { readonly mode: "readwrite" }) => Promise<PermissionState>;
};

/** Written into the file of before, into one just chosen, given to the browser's downloads, or left by the person. */
export type Saved = "again" | "chosen" | "downloaded" | "left";

const store = "own-files";
const remembered = () =>
  openDB<{ [store]: { key: string; value: OwnFile } }>("lacbench-files", 1, {
    upgrade: (fresh) => void fresh.createObjectStore(store),
  });

async function fileOf(notebook: string): Promise<OwnFile | undefined> {
  const db = await remembered();
  const file = await db.get(store, notebook);
  db.close();
  return file;
}

async function remember(notebook: string, file: OwnFile): Promise<void> {
  const db = await remembered();
  await db.put(store, file, notebook);
  db.close();
}

/** The file stays as it was until all of the new text is there: closing puts it in the place of the old. */
async function write(file: OwnFile, text: string): Promise<void> {
  const into = await file.createWritable();
  await into.write(text);
  await into.close();
}

async function writeAgain(notebook: string, text: string): Promise<boolean> {
  const file = await fileOf(notebook);
  if (file === undefined) return false;
  if ((await file.requestPermission?.({ mode: "readwrite" })) === "denied") return false;
  try {
    await write(file, text);
    return true;
  } catch (error) {
    if (error instanceof DOMException && error.name === "NotFoundError") return false; // moved or deleted: choose anew
    throw error;
  }
}

/**
 * Saves a notebook's text. With a house it is a copy, as a download; without one it goes into the one file that the person
 * keeps, where the browser can write to it.
 */
export async function saveToOwnFile(notebook: string, name: string, text: string): Promise<Saved> {
  const { showSaveFilePicker } = window as FilePicker;
  if (hasHouse || showSaveFilePicker === undefined) {
    saveFile(name, "application/json", text);
    return "downloaded";
  }
  if (await writeAgain(notebook, text)) return "again";
  try {
    const file = await showSaveFilePicker({
      suggestedName: name,
      types: [{ accept: { "application/json": [".json"] } }],
    });
    await write(file, text);
    await remember(notebook, file);
    return "chosen";
  } catch (error) {
    if (error instanceof DOMException && error.name === "AbortError") return "left";
    throw error;
  }
}
