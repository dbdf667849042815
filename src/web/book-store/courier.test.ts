import { expect, test } from "vitest";
import { newEntryId } from "../../core/notebook/entry-id.ts";
import { createApp } from "../../server/app.ts";
import { MemoryStore } from "../../store/memory-store.ts";
import { type Fetch, NotebookApi, OutOfReach } from "./api.ts";
import { Courier } from "./courier.ts";
import { MemoryKeep } from "./memory-keep.ts";
import { OpenBook } from "./open-book.ts";
import { noTabs } from "./tabs.ts";

// The real server as a function: both ends of the wire in one test, no ports.
const serverOf = (store: MemoryStore) =>
  createApp({
    store,
    calculations: [],
    version: "0",
    onError: (error) => {
      throw error;
    },
  });

let count = 0;
const newId = () => newEntryId("2026-10-14T17:00:00.000Z", ++count, (n) => new Uint8Array(n).fill(++count));
const notebookId = newId();

class Wire {
  up = true;
  asked = 0;
  app = serverOf(new MemoryStore());
  readonly fetch: Fetch = async (path, init) => {
    this.asked++;
    if (!this.up) throw new TypeError("Failed to fetch");
    return this.app.request(path, init);
  };
}

async function phone(wire: Wire) {
  const keep = new MemoryKeep(newId());
  let clock = 0;
  const book = new OpenBook(notebookId, await keep.device(), keep, [], 0, {
    now: () => new Date(Date.UTC(2026, 9, 14, 17, 0, ++clock)).toISOString(),
    randomBytes: (n) => new Uint8Array(n).fill(++count % 256),
    zone: "Europe/Berlin",
    tabs: noTabs,
  });
  const waits: number[] = [];
  const courier = new Courier(book, new NotebookApi(wire.fetch), null, {
    wait: (ms) => {
      waits.push(ms);
      return () => undefined;
    },
    hidden: () => false,
  });
  book.onSomethingToSend = () => undefined; // the test says when to go
  /** There and back with all that was written: it is sent once it is kept. */
  const round = async (): Promise<void> => {
    await book.settledHere();
    await courier.round();
  };
  return { keep, book, courier, round, waits };
}
const begin = (book: OpenBook) => book.write({ kind: "notebook-begun", body: { name: "Bench book" } });
const note = (book: OpenBook, text: string) => book.write({ kind: "note", body: { text } });
const notes = (book: OpenBook) =>
  book
    .whole()
    .ofKind("note")
    .map((entry) => (entry.body as { text: string }).text);

test("what is written is there at once, and in the house after one round", async () => {
  const wire = new Wire();
  const { book, round, keep } = await phone(wire);
  begin(book);
  note(book, "the stove was out");
  expect(notes(book)).toEqual(["the stove was out"]);
  expect(book.status()).toMatchObject({ toSend: 2, refused: 0 });
  await round();
  expect(book.status()).toMatchObject({ toSend: 0, refused: 0, reachable: true });
  await book.settledHere();
  expect((await keep.rows(notebookId)).map((row) => row.state)).toEqual(["sent", "sent"]);
});

test("two devices come to the same book, whoever goes first", async () => {
  const wire = new Wire();
  const a = await phone(wire);
  const b = await phone(wire);
  begin(a.book);
  note(a.book, "from a");
  await a.round();
  note(b.book, "from b");
  await b.round();
  await a.round();
  expect(notes(a.book).sort()).toEqual(["from a", "from b"]);
  expect(notes(b.book).sort()).toEqual(["from a", "from b"]);
});

test("out of reach, writing goes on and the wait grows; back in reach, all of it goes", async () => {
  const wire = new Wire();
  const { book, round, waits } = await phone(wire);
  wire.up = false;
  begin(book);
  for (const text of ["one", "two", "three"]) {
    note(book, text);
    await round();
  }
  expect(notes(book)).toEqual(["one", "two", "three"]);
  expect(book.status()).toMatchObject({ toSend: 4, reachable: false });
  expect(waits).toEqual([1000, 2000, 4000]);
  wire.up = true;
  await round();
  expect(book.status()).toMatchObject({ toSend: 0, reachable: true });
});

test("what is not kept yet is not sent: another tab may have taken its number", async () => {
  const wire = new Wire();
  const { book, courier, round } = await phone(wire);
  begin(book);
  expect(book.status()).toMatchObject({ toSend: 1, unkept: 1 });
  await courier.round();
  expect(book.status()).toMatchObject({ toSend: 1, unkept: 0 });
  await round();
  expect(book.status()).toMatchObject({ toSend: 0, unkept: 0 });
});

test("word that the house may be back, come while an asking fails, has it asked again in a second", async () => {
  const wire = new Wire();
  const { courier, round, waits } = await phone(wire);
  wire.up = false;
  for (let i = 0; i < 6; i++) await round();
  const asking = courier.round();
  courier.nudge();
  await asking;
  expect(waits).toEqual([1000, 2000, 4000, 8000, 16_000, 32_000, 1000]);
});

test("a question that is never answered ends, as a house out of reach", async () => {
  const silent: Fetch = (_, init) =>
    new Promise((_, reject) =>
      init?.signal?.addEventListener("abort", () => reject(init.signal?.reason as DOMException)),
    );
  await expect(new NotebookApi(silent, 20).notebooks()).rejects.toBeInstanceOf(OutOfReach);
});

test("an entry that the house refuses is kept and said, and holds up no other", async () => {
  const wire = new Wire();
  const { book, round } = await phone(wire);
  begin(book);
  await round();
  const bad = await book.imported([
    JSON.stringify({
      ...JSON.parse(book.whole().kept(note(book, "good"))?.text ?? ""),
      id: newId(),
      body: { text: 7 },
    }),
  ]);
  expect(bad).toMatchObject({ added: 1 });
  note(book, "after");
  await round();
  expect(book.status()).toMatchObject({ toSend: 0, refused: 1 });
  expect(book.refused()[0]?.message).toMatch(/text/);
});

test("a house that was given another folder is told everything again", async () => {
  const wire = new Wire();
  const a = await phone(wire);
  begin(a.book);
  note(a.book, "kept");
  await a.round();
  wire.app = serverOf(new MemoryStore());
  note(a.book, "later");
  await a.round();
  await a.round();
  const b = await phone(wire);
  await b.round();
  expect(notes(b.book).sort()).toEqual(["kept", "later"]);
});

test("what was withdrawn is nowhere in what the browser keeps, whether it was here before or comes with it", async () => {
  const wire = new Wire();
  const a = await phone(wire);
  const b = await phone(wire);
  begin(a.book);
  const secret = note(a.book, "a name that must go");
  await a.round();
  await b.round();
  const texts = a.book
    .whole()
    .ordered()
    .map((entry) => a.book.whole().kept(entry.id)?.text ?? "");
  a.book.write({ kind: "withdrawn", body: { entries: [secret] } });
  const withdrawal = a.book.whole().ofKind("withdrawn")[0]?.id ?? "";
  await a.round();
  await b.round();
  const c = await phone(wire);
  await c.book.imported([...texts, a.book.whole().kept(withdrawal)?.text ?? ""]);
  for (const { book, keep } of [a, b, c]) {
    await book.settledHere();
    const kept = (await keep.rows(notebookId)).map((row) => row.text).join();
    expect(kept).not.toContain("a name that must go");
    expect(kept).toContain(secret);
  }
});

test("numbers run on over a visit, and one that another tab took first is given anew", async () => {
  const keep = new MemoryKeep(newId());
  const first = new OpenBook(notebookId, await keep.device(), keep, [], 0, effectsOf(1));
  begin(first);
  note(first, "one");
  await first.settledHere();
  const rows = await keep.rows(notebookId);
  // Two tabs opened on the same rows, neither hearing the other.
  const tabA = new OpenBook(notebookId, await keep.device(), keep, rows, 2, effectsOf(60));
  const tabB = new OpenBook(notebookId, await keep.device(), keep, rows, 2, effectsOf(120));
  const a = note(tabA, "from tab A");
  const b = note(tabB, "from tab B");
  await tabA.settledHere();
  await tabB.settledHere();
  expect(tabA.whole().entry(a)?.seq).toBe(3);
  expect(tabB.whole().entry(b)?.seq).toBe(4);
  expect((await keep.rows(notebookId)).map((row) => JSON.parse(row.text).seq)).toEqual([1, 2, 3, 4]);
  const c = note(tabB, "the next");
  expect(tabB.whole().entry(c)?.seq).toBe(5);
});

const effectsOf = (start: number) => {
  let clock = start;
  return {
    now: () => new Date(Date.UTC(2026, 9, 14, 17, 0, ++clock)).toISOString(),
    randomBytes: (n: number) => new Uint8Array(n).fill(++count % 256),
    zone: "Europe/Berlin",
    tabs: noTabs,
  };
};
