import { expect, test } from "vitest";
import { randomFromSeed } from "../random.ts";
import { Notebook } from "./notebook.ts";
import { strikesToCorrect, writeEntry } from "./write-entry.ts";

const book = "019a0000-0000-7000-8000-000000000001";
const device = "019a0000-0000-7000-8000-0000000000d1";

function effectsFrom(seed: string, start = "2026-10-05T18:30:00.000Z") {
  const random = randomFromSeed(seed);
  let seq = 0;
  return {
    now: () => start,
    randomBytes: (n: number) => Uint8Array.from({ length: n }, () => Math.floor(random() * 256)),
    zone: "Europe/Berlin",
    device,
    nextSeq: () => ++seq,
    by: null,
  };
}

test("a correction stands for the thing, and undoing it brings back the one before", () => {
  const effects = effectsFrom("corrections");
  const notebook = new Notebook(book);
  const note = (text: string, about: string[] = [], strikes: string[] = []) =>
    writeEntry({ notebook: book, kind: "note", body: { text }, about, strikes }, effects);
  const first = note("2 lb");
  const second = note("1 lb", [first.entry.id], strikesToCorrect(first.entry));
  const third = note("1½ lb", [first.entry.id], strikesToCorrect(second.entry));
  notebook.add([third, first, second]);
  const thing = first.entry.id;
  expect(notebook.making(thing)?.body).toEqual({ text: "1½ lb" });
  expect(notebook.touching(thing).map((e) => e.id)).toEqual([third.entry.id]);
  expect(notebook.thingOf(third.entry)).toBe(thing);
  const undo = writeEntry({ notebook: book, kind: "struck", body: {}, strikes: [third.entry.id] }, effects);
  notebook.add([undo]);
  expect(notebook.making(thing)?.body).toEqual({ text: "1 lb" });
  const redo = writeEntry({ notebook: book, kind: "struck", body: {}, strikes: [undo.entry.id] }, effects);
  notebook.add([redo]);
  expect(notebook.making(thing)?.body).toEqual({ text: "1½ lb" });
  expect(notebook.reports).toEqual([]);
});
