import fc from "fast-check";
import { expect, test } from "vitest";
import type { KeptEntry, NotebookEntry } from "../../src/core/notebook/entry.ts";
import { Notebook } from "../../src/core/notebook/notebook.ts";
import type { NotebookReader } from "../../src/core/notebook/reader.ts";
import { book, idNumbered, keptOf, snapshot, someEntries } from "./entries.ts";

function foldOf(...parts: readonly (readonly KeptEntry[])[]): Notebook {
  const notebook = new Notebook(book);
  for (const part of parts) notebook.add(part);
  return notebook;
}

const parted = fc
  .tuple(someEntries(), fc.array(fc.nat(), { minLength: 12, maxLength: 12 }))
  .map(([entries, keys]) => ({
    entries,
    keyed: entries.map((kept, i) => ({ kept, key: keys[i] as number })),
  }));

test("union is commutative and associative: any order and any parts give the same notebook", () => {
  fc.assert(
    fc.property(parted, fc.nat(12), ({ entries, keyed }, at) => {
      const shuffled = [...keyed].sort((a, b) => a.key - b.key).map(({ kept }) => kept);
      const whole = snapshot(foldOf(entries));
      expect(snapshot(foldOf(shuffled))).toEqual(whole);
      expect(snapshot(foldOf(shuffled.slice(at), shuffled.slice(0, at)))).toEqual(whole);
      expect(snapshot(foldOf(...shuffled.map((kept) => [kept])))).toEqual(whole);
    }),
    { numRuns: 100 },
  );
});

test("union is idempotent: an entry that arrives twice counts once", () => {
  fc.assert(
    fc.property(someEntries(), (entries) => {
      const notebook = foldOf(entries);
      const before = snapshot(notebook);
      const report = notebook.add(entries);
      expect(report).toMatchObject({ added: [], refused: [], emptied: [] });
      expect(report.known).toHaveLength(entries.length);
      expect(snapshot(notebook)).toEqual(before);
    }),
    { numRuns: 100 },
  );
});

test("entry by entry, looked at in between, comes to the same as all at once", () => {
  fc.assert(
    fc.property(someEntries(), (entries) => {
      const notebook = new Notebook(book);
      entries.forEach((kept, i) => {
        notebook.add([kept]);
        expect(snapshot(notebook)).toEqual(snapshot(foldOf(entries.slice(0, i + 1))));
      });
    }),
    { numRuns: 100 },
  );
});

test("a remembered view is what it would be if it were computed afresh", () => {
  const jar = (id: string) => (read: NotebookReader) => ({
    made: read.making(id)?.id,
    notes: read.touching(id).map((entry) => [entry.id, read.thingOf(entry)]),
  });
  const bench = (read: NotebookReader) => ({
    boards: read.ofKind("board-cut").map((entry) => read.derive(`jar:${entry.id}`, jar(entry.id))),
    first: read.derive(`jar:${idNumbered(0)}`, jar(idNumbered(0))),
    isLive: read.isLive(idNumbered(1)),
  });
  fc.assert(
    fc.property(someEntries(), (entries) => {
      const notebook = new Notebook(book);
      for (const kept of entries) {
        notebook.add([kept]);
        expect(notebook.derive("bench", bench)).toEqual(bench(foldOf(keptIn(notebook))));
      }
    }),
    { numRuns: 100 },
  );
});

const keptIn = (notebook: Notebook): KeptEntry[] =>
  notebook.ordered().map(({ id }) => notebook.kept(id) as KeptEntry);

test("a view is computed again only when what it read has changed", () => {
  const notebook = foldOf([keptOf({ id: idNumbered(1) }), keptOf({ id: idNumbered(2) })]);
  let runs = 0;
  const look = () => notebook.derive("one", (read) => [++runs, read.touching(idNumbered(1)).length]);
  expect(look()).toEqual([1, 1]);
  notebook.add([keptOf({ id: idNumbered(3), about: [idNumbered(2)] })]);
  expect(look()).toEqual([1, 1]);
  notebook.add([keptOf({ id: idNumbered(4), about: [idNumbered(1)] })]);
  expect(look()).toEqual([2, 2]);
  notebook.add([keptOf({ id: idNumbered(5), kind: "struck", strikes: [idNumbered(4)] })]);
  expect(look()).toEqual([3, 1]);
});

test("a list once given out does not change", () => {
  const notebook = foldOf([keptOf({ id: idNumbered(1) })]);
  const before = notebook.ordered();
  const notes = notebook.ofKind("note");
  notebook.add([keptOf({ id: idNumbered(0) })]);
  expect(before).toHaveLength(1);
  expect(notes).toHaveLength(1);
  expect(notebook.ordered().map((entry) => entry.id)).toEqual([idNumbered(0), idNumbered(1)]);
});

test("a use comes after its making whatever the clocks say", () => {
  fc.assert(
    fc.property(someEntries({ withStrikes: false }), (entries) => {
      const notebook = foldOf(entries);
      const at = new Map(notebook.ordered().map((entry, i) => [entry.id, i]));
      const ringed = new Set(
        notebook.reports.flatMap((r) => ("ids" in r && r.code === "link-ring" ? r.ids : [])),
      );
      for (const entry of notebook.ordered())
        for (const id of entry.about)
          if (id !== entry.id && at.has(id) && !(ringed.has(id) && ringed.has(entry.id)))
            expect(at.get(id)).toBeLessThan(at.get(entry.id) as number);
    }),
    { numRuns: 150 },
  );
});

test("a clock a year off reorders nothing that is linked", () => {
  const jar = keptOf({ id: idNumbered(5), happened: "2026-10-05T18:30:00Z" });
  const look = keptOf({ id: idNumbered(4), about: [idNumbered(5)], happened: "2025-10-05T19:00:00Z" });
  const thinned = keptOf({ id: idNumbered(3), about: [idNumbered(4)], happened: "2025-10-05T20:00:00Z" });
  const other = keptOf({ id: idNumbered(2), happened: "2026-10-05T18:30:00.0Z" });
  const order = foldOf([thinned, look, other, jar])
    .ordered()
    .map((entry) => entry.id);
  expect(order).toEqual([2, 5, 4, 3].map(idNumbered));
});

test("a ring of links is reported, and its entries are ordered by id", () => {
  const [a, b, c] = [1, 2, 3].map(idNumbered) as [string, string, string];
  const notebook = foldOf([
    keptOf({ id: c, about: [a], happened: "2026-01-01T00:00:00Z" }),
    keptOf({ id: a, about: [b], happened: "2026-03-01T00:00:00Z" }),
    keptOf({ id: b, about: [c], happened: "2026-02-01T00:00:00Z" }),
    keptOf({ id: idNumbered(0), about: [b], happened: "2026-01-01T00:00:00Z" }),
  ]);
  expect(notebook.ordered().map((entry) => entry.id)).toEqual([a, b, c, idNumbered(0)]);
  expect(notebook.reports).toContainEqual({ code: "link-ring", ids: [a, b, c] });
});

/** Liveness by its definition alone: settled entry by entry until nothing changes; what is left hangs in rings. */
function livenessByDefinition(entries: readonly NotebookEntry[]): Map<string, boolean | "ring"> {
  const strikers = (id: string) => entries.filter((entry) => entry.strikes.includes(id));
  const live = new Map<string, boolean | "ring">();
  for (let changed = true; changed; ) {
    changed = false;
    for (const { id } of entries) {
      if (live.has(id)) continue;
      const states = strikers(id).map((striker) => live.get(striker.id));
      if (states.some((state) => state === true)) live.set(id, false);
      else if (states.every((state) => state === false)) live.set(id, true);
      else continue;
      changed = true;
    }
  }
  for (const { id } of entries) if (!live.has(id)) live.set(id, "ring");
  return live;
}

test("an entry is live unless a live entry strikes it; the rest hangs in rings, whose entries are live and reported", () => {
  fc.assert(
    fc.property(someEntries(), (entries) => {
      const notebook = foldOf(entries);
      const ringed = new Set(
        notebook.reports.flatMap((r) => ("ids" in r && r.code === "strike-ring" ? r.ids : [])),
      );
      for (const [id, state] of livenessByDefinition(entries.map((kept) => kept.entry))) {
        if (state !== "ring") expect(notebook.isLive(id)).toBe(state);
        if (ringed.has(id)) expect([state, notebook.isLive(id)]).toEqual(["ring", true]);
      }
      const hanging = [...livenessByDefinition(entries.map((kept) => kept.entry)).values()];
      expect(ringed.size > 0).toBe(hanging.includes("ring"));
    }),
    { numRuns: 300 },
  );
});

test("a strike may come before what it strikes, two strikes count once, and undoing an undo works", () => {
  const [entry, undo, again, redo] = [1, 2, 3, 4].map(idNumbered) as [string, string, string, string];
  const strike = (id: string, ...strikes: string[]) => keptOf({ id, kind: "struck", strikes });
  const notebook = foldOf([strike(undo, entry)], [strike(again, entry)]);
  notebook.add([keptOf({ id: entry })]);
  expect(notebook.isLive(entry)).toBe(false);
  notebook.add([strike(redo, undo, again)]);
  expect(notebook.isLive(entry)).toBe(true);
  notebook.add([strike(idNumbered(5), redo)]);
  expect(notebook.isLive(entry)).toBe(false);
});

test("strikes that form a ring are all live and reported, an entry that strikes itself too", () => {
  const [a, b, c] = [1, 2, 3].map(idNumbered) as [string, string, string];
  const notebook = foldOf([
    keptOf({ id: a, strikes: [b] }),
    keptOf({ id: b, strikes: [a] }),
    keptOf({ id: c, strikes: [c] }),
  ]);
  expect([a, b, c].map((id) => notebook.isLive(id))).toEqual([true, true, true]);
  expect(notebook.reports).toContainEqual({ code: "strike-ring", ids: [a, b] });
  expect(notebook.reports).toContainEqual({ code: "strike-ring", ids: [c] });
});

test("a strike and an entry of another notebook reach nothing here", () => {
  const elsewhere = "01a00000-0000-7000-8000-00000000ffff";
  const strike = keptOf({ id: idNumbered(2), notebook: elsewhere, kind: "struck", strikes: [idNumbered(1)] });
  const notebook = foldOf([keptOf({ id: idNumbered(1) })]);
  expect(notebook.add([strike]).refused).toMatchObject([{ id: idNumbered(2), code: "other-notebook" }]);
  expect(notebook.isLive(idNumbered(1))).toBe(true);
  expect(notebook.size).toBe(1);
});

test("the same id with other content is refused and reported, and what was here stays", () => {
  const first = keptOf({ id: idNumbered(1), body: { text: "57 g" } });
  const other = keptOf({ id: idNumbered(1), body: { text: "75 g" } });
  const notebook = foldOf([first]);
  expect(notebook.add([other]).refused).toMatchObject([{ code: "same-id-other-content" }]);
  expect(notebook.kept(idNumbered(1))).toBe(first);
  expect(notebook.reports).toMatchObject([{ about: "refused", id: idNumbered(1) }]);
});

test("unknown kinds, higher schemas and bodies that will not do are kept and reported, and kept from views", () => {
  const odd = [
    keptOf({ id: idNumbered(1), kind: "from-next-year", body: { x: 1 } }),
    keptOf({ id: idNumbered(2), kind: "note", schema: 2, body: { words: [] } }),
    keptOf({ id: idNumbered(3), kind: "note", body: {} }),
    keptOf({ id: idNumbered(4), body: { text: "t", mood: "bright" }, weather: "dry" }),
  ];
  const notebook = foldOf(odd);
  expect(notebook.ofKind("note").map((entry) => entry.id)).toEqual([idNumbered(4)]);
  expect(notebook.ordered()).toHaveLength(4);
  expect(notebook.reports.slice(0, 4)).toMatchObject([
    { code: "not-understood", id: idNumbered(1), kind: "from-next-year" },
    { code: "not-understood", id: idNumbered(2), schema: 2 },
    { code: "unusable", id: idNumbered(3), problem: { code: "missing", field: "body.text" } },
    { code: "unknown-fields", id: idNumbered(4), fields: ["weather", "body.mood"] },
  ]);
});

test("gaps in a device's numbers, and numbers that come twice, are reported", () => {
  const numbered = (i: number, seq: number) => keptOf({ id: idNumbered(i), seq });
  const notebook = foldOf([numbered(1, 2), numbered(2, 5), numbered(3, 5)]);
  expect(notebook.reports).toMatchObject([
    { code: "gap", from: 1, to: 1 },
    { code: "gap", from: 3, to: 4 },
    { code: "same-number", seq: 5, ids: [idNumbered(2), idNumbered(3)] },
  ]);
});

test("a chain of twenty thousand undos and links folds without running out of stack", () => {
  const id = (i: number) => `01a00000-0000-7000-8000-${i.toString(16).padStart(12, "0")}`;
  const length = 20_000;
  const chain = Array.from({ length }, (_, i) =>
    keptOf({ id: id(i), ...(i === 0 ? {} : { strikes: [id(i - 1)], about: [id(i - 1)] }) }),
  );
  const notebook = foldOf(chain.slice().reverse());
  expect(notebook.ordered().every((entry, i) => entry.id === id(i))).toBe(true);
  expect(notebook.isLive(id(length - 1))).toBe(true);
  expect(notebook.isLive(id(length - 2))).toBe(false);
  expect(notebook.isLive(id(0))).toBe(false);
});
