import { type DBSchema, type IDBPDatabase, openDB } from "idb";
import { createSignal } from "solid-js";
import type { Photograph } from "../../core/notebook/photographs-in-file.ts";

/** Whether the house has its bytes, or, with no house, the person's own file. */
type PictureState = "to-send" | "sent";

interface KeptPicture extends Photograph {
  readonly notebook: string;
  readonly state: PictureState;
  /** When it was kept, ms: one that was kept just now may have no entry yet. */
  readonly since: number;
}
interface Stores extends DBSchema {
  pictures: { key: [string, string]; value: KeptPicture; indexes: { "by-notebook": string } };
}

let opened: Promise<IDBPDatabase<Stores>> | undefined;

/** By itself, beside the entries' database: that one is read whole when a notebook is opened. */
function database(): Promise<IDBPDatabase<Stores>> {
  opened ??= openDB<Stores>("lacbench-photographs", 1, {
    upgrade(fresh) {
      const pictures = fresh.createObjectStore("pictures", { keyPath: ["notebook", "sha256"] });
      pictures.createIndex("by-notebook", "notebook");
    },
    terminated: () => {
      opened = undefined;
    },
  });
  return opened;
}

/** What a browser throws that keeps nothing, or has no room left. */
export const isNoKeep = (error: unknown): boolean =>
  error instanceof DOMException || error instanceof ReferenceError || error instanceof TypeError;

const [waiting, setWaiting] = createSignal(0);
/** Photographs of the open notebook that are on this device alone. */
export const photographsWaiting = waiting;

const picturesOf = async (notebook: string) =>
  (await database()).getAllFromIndex("pictures", "by-notebook", notebook);

/** Counts those that wait. A browser that keeps nothing has none. */
export async function countWaiting(notebook: string): Promise<void> {
  try {
    setWaiting((await picturesToSend(notebook)).length);
  } catch (error) {
    if (!isNoKeep(error)) throw error;
  }
}

/** On the disk when this returns. One that is kept already stays as it is. */
export async function keepPicture(notebook: string, picture: Photograph, state: PictureState): Promise<void> {
  const tx = (await database()).transaction("pictures", "readwrite", { durability: "strict" });
  const { sha256, type, bytes } = picture;
  if ((await tx.store.getKey([notebook, sha256])) === undefined)
    await tx.store.put({ notebook, sha256, type, bytes, state, since: Date.now() });
  await tx.done;
  if (state === "to-send") await countWaiting(notebook);
}

export const pictureHere = async (notebook: string, sha256: string): Promise<Photograph | undefined> =>
  (await database()).get("pictures", [notebook, sha256]);

export const picturesToSend = async (notebook: string): Promise<readonly Photograph[]> =>
  (await picturesOf(notebook)).filter((one) => one.state === "to-send");

/** What became of it: the house (or the file) has it, or has to be given it again. */
export async function settlePictures(
  notebook: string,
  sha256s: readonly string[],
  state: PictureState,
): Promise<void> {
  const tx = (await database()).transaction("pictures", "readwrite");
  for (const sha256 of sha256s) {
    const kept = await tx.store.get([notebook, sha256]);
    if (kept !== undefined) await tx.store.put({ ...kept, state });
  }
  await tx.done;
  await countWaiting(notebook);
}

/** The house knows nothing any more: all are to be sent anew. */
export const sendPicturesAgain = async (notebook: string): Promise<void> =>
  settlePictures(
    notebook,
    (await picturesOf(notebook)).map((one) => one.sha256),
    "to-send",
  );

export async function dropPicture(notebook: string, sha256: string): Promise<void> {
  await (await database()).delete("pictures", [notebook, sha256]);
  await countWaiting(notebook);
}

const entryFollowsMs = 60_000;

/** Drops those that no entry speaks of: withdrawn, or left when the page was closed before its entry was written. */
export async function dropUnnamed(notebook: string, named: ReadonlySet<string>): Promise<void> {
  for (const { sha256, since } of await picturesOf(notebook))
    if (!named.has(sha256) && Date.now() - since > entryFollowsMs) await dropPicture(notebook, sha256);
}
