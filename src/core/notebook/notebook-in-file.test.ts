import { expect, test } from "vitest";
import { demoEntries } from "../demo/demo.ts";
import { notebookFile } from "./notebook-file.ts";
import { notebookInFile } from "./notebook-in-file.ts";

const demo = demoEntries({ seed: "1", now: "2026-10-31T12:00:00.000Z", zone: "Europe/Berlin" });
const texts = demo.map((one) => one.text);

test("a whole file is told with its name, its entries as they stand and nothing missing", () => {
  const read = notebookInFile(notebookFile(texts));
  if (!read.ok) throw new Error(read.error.message);
  expect(read.value).toMatchObject({ id: demo[0]?.entry.notebook, invented: true, refused: [], missing: 0 });
  expect(new Set(read.value.entries.map((one) => one.text))).toEqual(new Set(texts));
  expect(read.value.name).not.toBe("");
});

test("an entry that is gone is counted, one that was spoiled is named, one that comes twice counts once", () => {
  const without = [...texts.slice(0, 40), ...texts.slice(41)];
  expect(notebookInFile(notebookFile(without))).toMatchObject({ ok: true, value: { missing: 1 } });
  const spoiled = texts.map((text, i) => (i === 40 ? text.replace('"seq":', '"sequel":') : text));
  const read = notebookInFile(notebookFile(spoiled));
  expect(read).toMatchObject({ ok: true, value: { missing: 1 } });
  expect(read.ok && read.value.refused[0]).toMatch(/seq/);
  const twice = notebookInFile(notebookFile([...texts, texts[3] as string]));
  expect(twice.ok && twice.value.entries.length).toBe(texts.length);
});

test("a file that is cut off, of several notebooks, or of something else is refused whole", () => {
  const file = notebookFile(texts);
  expect(notebookInFile(file.slice(0, -9))).toMatchObject({ ok: false, error: { code: "unreadable" } });
  const of = (notebook: string) => (texts[0] as string).replace(demo[0]?.entry.notebook as string, notebook);
  const other = of("018f2c00-0000-7000-8000-00000000000a").replace(
    demo[0]?.entry.id as string,
    "018f2c00-0000-7000-8000-00000000000b",
  );
  const mixed = notebookInFile(notebookFile([texts[0] as string, other]));
  expect(mixed.ok ? "" : mixed.error.message).toMatch(/several notebooks/);
  expect(notebookInFile("[]")).toMatchObject({ ok: false });
  expect(notebookInFile("flakes, jars, tape")).toMatchObject({ ok: false });
});
