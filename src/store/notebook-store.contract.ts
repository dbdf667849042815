import { createHash } from "node:crypto";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { type NotebookStore, UnknownCursor } from "./notebook-store.ts";

const notebook = "01a00000-0000-7000-8000-0000000000b0";
const elsewhere = "01a00000-0000-7000-8000-0000000000b1";
const numbered = (i: number): string => `01a00000-0000-7000-8000-${i.toString(16).padStart(12, "0")}`;
const sha256 = (bytes: Uint8Array | string): string => createHash("sha256").update(bytes).digest("hex");

export function entryText(i: number, fields: Readonly<Record<string, unknown>> = {}): string {
  return JSON.stringify({
    id: numbered(i),
    notebook,
    kind: "note",
    schema: 1,
    device: numbered(999),
    seq: i + 1,
    by: null,
    happened: "2026-10-05T18:30:00Z",
    happenedKnownTo: "minute",
    zone: "Europe/Berlin",
    recorded: "2026-10-05T18:30:00Z",
    about: [],
    strikes: [],
    body: { text: `entry ${i}` },
    ...fields,
  });
}
const begun = entryText(0, { kind: "notebook-begun", body: { name: "Shop" } });
const withdrawalOf = (i: number, ...of: number[]): string =>
  entryText(i, { kind: "withdrawn", body: { entries: of.map(numbered) } });
const photographed = (i: number, bytes: Uint8Array): string =>
  entryText(i, {
    kind: "photograph",
    body: { sha256: sha256(bytes), type: "image/jpeg", bytes: bytes.length },
  });

/** What every store must do; `open` gives an empty one each time. */
export function notebookStoreContract(name: string, open: () => Promise<NotebookStore>): void {
  describe(name, () => {
    let store: NotebookStore;
    beforeEach(async () => {
      store = await open();
    });
    afterEach(() => store.close());
    const all = async () => (await store.after(notebook, null, 1_000)).entries;

    test("a notebook begins with its first entry, and is listed by its name", async () => {
      expect(await store.notebooks()).toEqual([]);
      expect(await store.has(notebook)).toBe(false);
      const early = await store.append(notebook, [entryText(1)]);
      expect(early).toMatchObject({ accepted: [], refused: [{ id: numbered(1), code: "no-such-notebook" }] });
      expect(await store.has(notebook)).toBe(false);
      const report = await store.append(notebook, [entryText(1), begun]);
      expect(report).toEqual({ accepted: [numbered(1), numbered(0)], refused: [] });
      expect(await store.has(notebook)).toBe(true);
      expect(await store.notebooks()).toEqual([{ id: notebook, name: "Shop", invented: false, entries: 2 }]);
      const renamed = {
        kind: "notebook-begun",
        strikes: [numbered(0)],
        body: { name: "School", invented: true },
      };
      await store.append(notebook, [entryText(2, renamed)]);
      expect(await store.notebooks()).toMatchObject([{ name: "School", invented: true, entries: 3 }]);
      await store.append(notebook, [entryText(3, { kind: "struck", strikes: [numbered(2)], body: {} })]);
      expect(await store.notebooks()).toMatchObject([{ name: "Shop", invented: false }]);
    });

    test("texts come back byte for byte, in the order of arrival, page by page", async () => {
      const odd = [
        ` {"later":9007199254740993, ${entryText(1).slice(1)}`.trim(),
        entryText(2, { kind: "from-next-year", schema: 9, body: { any: ["½", "\u0000", "🜁"] } }),
        entryText(3).replaceAll(",", " ,\n "),
      ];
      await store.append(notebook, [begun, ...odd]);
      expect(await all()).toEqual([begun, ...odd]);
      const first = await store.after(notebook, null, 3);
      const second = await store.after(notebook, first.cursor, 3);
      expect([...first.entries, ...second.entries]).toEqual([begun, ...odd]);
      const end = await store.after(notebook, second.cursor, 3);
      expect(end).toEqual({ entries: [], cursor: second.cursor });
      await store.append(notebook, [entryText(4)]);
      expect((await store.after(notebook, end.cursor, 3)).entries).toEqual([entryText(4)]);
    });

    test("the same entry any number of times is kept once, also in other words", async () => {
      const spelt = `  ${JSON.stringify(Object.fromEntries(Object.entries(JSON.parse(entryText(1))).reverse()), null, 2)}`;
      await store.append(notebook, [begun, entryText(1), entryText(1)]);
      expect(await store.append(notebook, [entryText(1), spelt])).toEqual({
        accepted: [numbered(1)],
        refused: [],
      });
      expect(await all()).toEqual([begun, entryText(1)]);
    });

    test("what will not do is refused one by one, and the rest is kept", async () => {
      const other = entryText(1, { body: { text: "other content" } });
      const report = await store.append(notebook, [
        begun,
        entryText(1),
        other,
        entryText(2, { notebook: elsewhere }),
        entryText(3, { body: {} }),
        "not json",
        entryText(4, { id: "short" }),
        entryText(5),
      ]);
      expect(report.accepted).toEqual([0, 1, 5].map(numbered));
      expect(report.refused).toMatchObject([
        { id: numbered(1), code: "same-id-other-content" },
        { id: numbered(2), code: "other-notebook" },
        { id: numbered(3), code: "missing", field: "body.text" },
        { id: null, code: "unreadable" },
        { id: "short", code: "wrong-type", field: "id" },
      ]);
      expect(await all()).toEqual([begun, entryText(1), entryText(5)]);
    });

    test("an id may stand in two notebooks, which know nothing of each other", async () => {
      const other = [begun, entryText(1, { body: { text: "mine" } })].map((text) =>
        text.replace(`"notebook":"${notebook}"`, `"notebook":"${elsewhere}"`),
      );
      await store.append(notebook, [begun, entryText(1)]);
      await store.append(elsewhere, other);
      expect(await all()).toEqual([begun, entryText(1)]);
      expect((await store.after(elsewhere, null, 9)).entries).toEqual(other);
      expect(await store.notebooks()).toHaveLength(2);
    });

    test.each([
      ["before the withdrawal", [entryText(1), withdrawalOf(2, 1)]],
      ["after it", [withdrawalOf(2, 1), entryText(1)]],
    ])("a text that came %s is dropped, keeps its place, and does not come back", async (_, texts) => {
      await store.append(notebook, [begun]);
      for (const text of texts) await store.append(notebook, [text]);
      const late = await store.append(notebook, [entryText(1)]);
      expect(late).toEqual({ accepted: [numbered(1)], refused: [] });
      const kept = await all();
      expect(kept).toHaveLength(3);
      expect(kept.join("")).not.toContain("entry 1");
      const stub = JSON.parse(kept[texts.indexOf(entryText(1)) + 1] as string);
      const { id, kind, happened, recorded } = JSON.parse(entryText(1));
      expect(stub).toMatchObject({
        id,
        kind,
        happened,
        recorded,
        withdrawn: { sha256: sha256(entryText(1)) },
      });
      expect(stub.body).toEqual({});
    });

    test("a withdrawal in the same append as its entry drops it too", async () => {
      await store.append(notebook, [begun, entryText(1), withdrawalOf(2, 1, 7)]);
      expect((await all()).join("")).not.toContain("entry 1");
      await store.append(notebook, [entryText(7)]);
      expect((await all()).join("")).not.toContain("entry 7");
    });

    test("photographs are kept under their hash, and under no other", async () => {
      const bytes = Uint8Array.from([0xff, 0xd8, 0xff, 1, 2, 3]);
      expect(await store.photograph(sha256(bytes))).toBeNull();
      expect(await store.putPhotograph(sha256("another"), bytes)).toBe("hash-differs");
      expect(await store.putPhotograph(sha256(bytes), bytes)).toBe("kept");
      expect(await store.putPhotograph(sha256(bytes), bytes)).toBe("kept");
      expect(Array.from((await store.photograph(sha256(bytes))) ?? [])).toEqual([...bytes]);
    });

    test("a withdrawn photograph's bytes go, unless another entry shows them, and come back with one that does", async () => {
      const [alone, shared] = [Uint8Array.from([1]), Uint8Array.from([2])] as const;
      await store.append(notebook, [
        begun,
        photographed(1, alone),
        photographed(2, shared),
        photographed(3, shared),
      ]);
      for (const bytes of [alone, shared]) await store.putPhotograph(sha256(bytes), bytes);
      await store.append(notebook, [withdrawalOf(4, 1, 2)]);
      expect(await store.photograph(sha256(alone))).toBeNull();
      expect(await store.photograph(sha256(shared))).not.toBeNull();
      expect(await store.putPhotograph(sha256(alone), alone)).toBe("withdrawn");
      await store.append(notebook, [photographed(5, alone)]);
      expect(await store.putPhotograph(sha256(alone), alone)).toBe("kept");
    });

    test("a cursor that was not given out is refused", async () => {
      await store.append(notebook, [begun]);
      for (const cursor of ["", "x", "-1", "1.5", "01", "9".repeat(30)])
        await expect(store.after(notebook, cursor, 10)).rejects.toThrow(UnknownCursor);
    });

    test("two appends begun together both count, and numbers leave no gap", async () => {
      await store.append(notebook, [begun]);
      const texts = Array.from({ length: 40 }, (_, i) => entryText(i + 1));
      await Promise.all(texts.map((text) => store.append(notebook, [text])));
      const seen: string[] = [];
      for (let cursor: string | null = null; ; ) {
        const page = await store.after(notebook, cursor, 7);
        if (page.entries.length === 0) break;
        seen.push(...page.entries);
        cursor = page.cursor;
      }
      expect([...seen].sort()).toEqual([begun, ...texts].sort());
    });
  });
}
