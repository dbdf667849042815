import type { NotebookInFile } from "../../core/notebook/notebook-in-file.ts";
import { writeEntry } from "../../core/notebook/write-entry.ts";
import { hasHouse } from "../has-house.ts";
import { countWaiting, isNoKeep, keepPicture, sendPicturesAgain } from "../photographs/picture-keep.ts";
import { PhotographSender } from "../photographs/send.ts";
import { type NotebookApi, NotLetIn, OutOfReach, Refused } from "./api.ts";
import { Courier } from "./courier.ts";
import type { Keep } from "./keep.ts";
import { type BookEffects, OpenBook } from "./open-book.ts";
import { newId, randomBytes } from "./open-keep.ts";
import { tabsOfBrowser } from "./tabs.ts";
import { writer } from "./writer.ts";

/** A notebook that can be opened here: kept in this browser, told of by the house, or both. */
export interface Known {
  readonly id: string;
  readonly name: string;
  readonly invented: boolean;
  readonly entries: number | undefined;
}

export interface KnownNotebooks {
  readonly list: readonly Known[];
  readonly reachable: boolean;
  /** The house answers, and does not let this device in. */
  readonly barred: boolean;
}

/** What this browser keeps, and what the house tells of, if there is one. */
export async function knownNotebooks(keep: Keep, api: NotebookApi | undefined): Promise<KnownNotebooks> {
  const cards = await keep.cards();
  const list = new Map<string, Known>(
    cards.map(({ id, name, invented }) => [id, { id, name, invented, entries: undefined }]),
  );
  if (api === undefined) return { list: [...list.values()], reachable: true, barred: false };
  try {
    for (const told of await api.notebooks()) {
      const card = list.get(told.id);
      const name = told.name ?? card?.name ?? "";
      const invented = told.invented ?? card?.invented ?? false;
      list.set(told.id, { id: told.id, name, invented, entries: told.entries });
      await keep.putCard({ id: told.id, name, invented });
    }
    return { list: [...list.values()], reachable: true, barred: false };
  } catch (error) {
    if (!(error instanceof OutOfReach || error instanceof Refused || error instanceof SyntaxError))
      throw error;
    return { list: [...list.values()], reachable: false, barred: error instanceof NotLetIn };
  }
}

export const zoneHere = (): string => Intl.DateTimeFormat().resolvedOptions().timeZone;

const effects = (): BookEffects => ({
  now: () => new Date().toISOString(),
  randomBytes,
  zone: zoneHere(),
  tabs: tabsOfBrowser(),
});

/** A browser that keeps no photographs shows them for as long as the house has them. */
function leftHere(error: unknown): void {
  if (!isNoKeep(error)) throw error;
}

/** Opens a notebook from what is kept here, and sets a courier on the way if there is a house to go to. */
export async function openBook(keep: Keep, api: NotebookApi | undefined, id: string): Promise<OpenBook> {
  const at = effects();
  const card = (await keep.cards()).find((one) => one.id === id);
  const rows = await keep.rows(id);
  const book = new OpenBook(id, await keep.device(), keep, rows, card?.seq ?? 0, at);
  void countWaiting(id); // told as soon as it is known; nothing waits for it
  if (api === undefined) return book;
  const courier = new Courier(book, api, card?.cursor ?? null, {
    wait: (ms, then) => {
      const timer = setTimeout(then, ms);
      return () => clearTimeout(timer);
    },
    hidden: () => document.hidden,
  });
  const sender = new PhotographSender(book, (path, init) => fetch(path, init));
  courier.onAnswered = () => void sender.round();
  courier.onForgotten = () => sendPicturesAgain(id).catch(leftHere);
  addEventListener("online", () => courier.nudge());
  document.addEventListener("visibilitychange", () => !document.hidden && courier.nudge());
  if (rows.length === 0) await courier.round();
  else courier.nudge();
  return book;
}

/** A new notebook with its first entry, kept here at once and sent when it can be. */
export async function beginNotebook(keep: Keep, name: string): Promise<string> {
  const id = newId();
  await keep.putCard({ id, name });
  const begun = writeEntry(
    { notebook: id, kind: "notebook-begun", body: { name } },
    { ...effects(), device: await keep.device(), by: writer(), nextSeq: () => 1 },
  );
  await keep.keepWritten(id, [{ id: begun.entry.id, seq: 1, text: begun.text }]);
  return id;
}

/** A notebook whose entries are given: the demo. */
export async function keepNotebook(
  keep: Keep,
  card: { readonly id: string; readonly name: string; readonly invented: boolean },
  texts: readonly { readonly id: string; readonly text: string }[],
): Promise<void> {
  await keep.putCard(card);
  await keep.keepImported(card.id, texts);
}

/** A notebook out of a file: kept here, and sent to the house if there is one. Without one, what is in the file is settled. */
export async function keepOpened(keep: Keep, file: NotebookInFile): Promise<void> {
  const { id, name, invented, entries, photographs } = file;
  for (const one of photographs) await keepPicture(id, one, hasHouse ? "to-send" : "sent").catch(leftHere);
  if (hasHouse) return keepNotebook(keep, { id, name, invented }, entries);
  await keep.putCard({ id, name, invented });
  await keep.keepArrived(id, entries);
}
