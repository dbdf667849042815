import { expect, test } from "vitest";
import type { NotebookEntry } from "../../core/notebook/entry.ts";
import type { Kind } from "../../core/notebook/kinds/all.ts";
import { Notebook } from "../../core/notebook/notebook.ts";
import { type EntryDraft, writeEntry } from "../../core/notebook/write-entry.ts";
import { bookLines, thingsOf } from "./lines.ts";
import { byDay, exportName, filtered } from "./state.ts";

const notebookId = "018f0000-0000-7000-8000-000000000001";
let seq = 0;
function write<K extends Kind>(
  notebook: Notebook,
  draft: Omit<EntryDraft<K>, "notebook">,
  at: string,
): NotebookEntry {
  const kept = writeEntry<K>(
    { ...draft, notebook: notebookId, happened: at },
    {
      now: () => at,
      randomBytes: (length) => new Uint8Array(length),
      zone: "Europe/Berlin",
      device: "018f0000-0000-7000-8000-0000000000d1",
      by: null,
      nextSeq: () => ++seq,
    },
  );
  notebook.add([kept]);
  return kept.entry;
}

function withJar() {
  const notebook = new Notebook(notebookId);
  const grams = (g: number) => ({ typed: `${g} g`, unit: "g", si: g / 1000 });
  const jar = write(
    notebook,
    {
      kind: "batch-mixed",
      body: {
        code: "L4",
        resins: [{ name: "lemon flakes", amount: grams(57) }],
        solvents: [{ name: "ethanol 96 %", amount: grams(193) }],
        aimedCutLbPerGal: 2,
      },
    },
    "2026-10-14T16:00:00Z",
  );
  const look = write(
    notebook,
    { kind: "batch-looked-at", about: [jar.id], body: { undissolved: "a trace", clarity: "hazy" } },
    "2026-10-14T22:30:00Z",
  );
  return { notebook, jar, look };
}

test("entries say in words what happened, the newest first", () => {
  const { notebook } = withJar();
  expect(bookLines(notebook).map((line) => line.says)).toEqual([
    "L4 looked at: a trace undissolved, hazy.",
    "Jar L4 mixed: 57 g lemon flakes in 193 g ethanol 96 %, to make a 2 lb cut.",
  ]);
  expect(thingsOf(notebook).map(({ name, sort }) => [name, sort])).toEqual([["L4", "jar"]]);
});

test("a struck entry stays with a line through and can be brought back", () => {
  const { notebook, look } = withJar();
  const strike = write(notebook, { kind: "struck", strikes: [look.id], body: {} }, "2026-10-14T22:40:00Z");
  const struck = bookLines(notebook).find((line) => line.id === look.id);
  expect(struck?.state).toBe("struck");
  expect(struck?.struckBy).toEqual([strike.id]);
  expect(bookLines(notebook)[0]?.says).toBe("Struck out: “L4 looked at: a trace undissolved, hazy.”");
  write(notebook, { kind: "struck", strikes: struck?.struckBy ?? [], body: {} }, "2026-10-14T22:41:00Z");
  expect(bookLines(notebook).find((line) => line.id === look.id)?.state).toBe("live");
});

test("lines are found by any of their words and by the thing they are about", () => {
  const { notebook, jar } = withJar();
  const lines = bookLines(notebook);
  expect(filtered(lines, { text: "TRACE l4", about: undefined })).toHaveLength(1);
  expect(filtered(lines, { text: "", about: jar.id })).toHaveLength(2);
  expect(filtered(lines, { text: "spill", about: jar.id })).toHaveLength(0);
});

test("days are those of the reader's zone", () => {
  const { notebook } = withJar();
  expect(byDay(bookLines(notebook), "Europe/Berlin").map((d) => [d.day, d.lines.length])).toEqual([
    ["2026-10-15", 1],
    ["2026-10-14", 1],
  ]);
});

test("a file's name is one that every file system takes", () => {
  expect(exportName("Ann's bench / 2", "2026-10-14")).toBe("ann-s-bench-2-2026-10-14.json");
  expect(exportName("…", "2026-10-14")).toBe("notebook-2026-10-14.json");
});
