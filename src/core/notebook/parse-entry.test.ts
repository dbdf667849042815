import fc from "fast-check";
import { expect, test } from "vitest";
import { DomainError } from "../domain-error.ts";
import { longestEntry, parseEntry, readKeptEntry } from "./parse-entry.ts";
import { writeEntry } from "./write-entry.ts";

const id = "01a00000-0000-7000-8000-000000000001";
const whole = {
  id,
  notebook: id,
  kind: "note",
  schema: 1,
  device: id,
  seq: 1,
  by: null,
  happened: "2026-10-05T18:30:00Z",
  happenedKnownTo: "minute",
  zone: "Europe/Berlin",
  recorded: "2026-10-05T18:30:00Z",
  about: [],
  strikes: [],
  body: { text: "two pounds" },
};

test.each([
  ["id", "missing", { id: undefined }],
  ["id", "wrong-type", { id: "01A00000-0000-7000-8000-000000000001" }],
  ["schema", "out-of-range", { schema: 0 }],
  ["seq", "wrong-type", { seq: 1.5 }],
  ["by", "missing", { by: undefined }],
  ["happened", "wrong-type", { happened: "2026-10-05" }],
  ["happened", "wrong-type", { happened: "2026-13-05T18:30:00Z" }],
  ["happened", "wrong-type", { happened: "2025-02-29T18:30:00Z" }],
  ["happened", "wrong-type", { happened: "2026-10-05T24:00:00Z" }],
  ["happenedKnownTo", "unknown-name", { happenedKnownTo: "roughly" }],
  ["about[0]", "wrong-type", { about: ["J12"] }],
  ["body", "missing", { body: undefined }],
  ["body.text", "missing", { body: {} }],
  ["body.text", "wrong-type", { body: { text: 5 } }],
])("parseEntry names %s and says %s", (field, code, change) => {
  const read = parseEntry(JSON.stringify({ ...whole, ...change }));
  expect(read).toMatchObject({ ok: false, error: { field, code } });
});

test.each(["", "[", "null", "[]", "5"])("parseEntry refuses %s", (text) => {
  expect(parseEntry(text).ok).toBe(false);
});

test("parseEntry keeps unknown kinds, higher schemas, unknown fields and odd spellings, byte for byte", () => {
  const texts = [
    `{ "kind": "from-next-year", ${JSON.stringify({ ...whole, kind: undefined }).slice(1)}`,
    JSON.stringify({ ...whole, schema: 2, body: { words: [1] } }),
    JSON.stringify(whole)
      .replace('"seq":1', '"seq":1.0')
      .replace('"body":{', '"mood":1e0,"body":{"big":9007199254740993,'),
  ];
  for (const text of texts) expect(parseEntry(text)).toMatchObject({ ok: true, value: { text } });
});

test("parseEntry takes an entry at the limit and refuses one that is longer by a character", () => {
  const filled = (length: number) => {
    const frame = JSON.stringify({ ...whole, body: { text: "" } }).length;
    return JSON.stringify({ ...whole, body: { text: "x".repeat(length - frame) } });
  };
  expect(parseEntry(filled(longestEntry)).ok).toBe(true);
  const long = parseEntry(filled(longestEntry + 1));
  expect(long).toMatchObject({ ok: false, error: { code: "too-large", limits: { max: longestEntry } } });
});

test("readKeptEntry keeps a body that the door refuses, and says what is wrong with it", () => {
  const read = readKeptEntry(JSON.stringify({ ...whole, body: {} }));
  expect(read).toMatchObject({
    ok: true,
    value: { understanding: { as: "unusable", problem: { field: "body.text" } } },
  });
});

test("parseEntry never throws, whatever it is given", () => {
  fc.assert(
    fc.property(
      fc.oneof(
        fc.string(),
        fc.json(),
        fc.object().map((o) => JSON.stringify({ ...whole, ...o })),
      ),
      (text) => {
        expect(typeof parseEntry(text).ok).toBe("boolean");
      },
    ),
    { numRuns: 1_000 },
  );
});

test("writeEntry: what it writes is read back the same, and a body that will not do is refused by name", () => {
  const effects = {
    now: () => "2026-10-05T18:30:00.123Z",
    randomBytes: (n: number) => new Uint8Array(n).fill(7),
    zone: "Europe/Berlin",
    device: id,
    nextSeq: () => 3,
    by: "ana",
  };
  const kept = writeEntry(
    { notebook: id, kind: "note", body: { text: "½ lb" }, happenedKnownTo: "day" },
    effects,
  );
  expect(parseEntry(kept.text)).toEqual({ ok: true, value: kept });
  expect(kept.entry).toMatchObject({
    seq: 3,
    by: "ana",
    schema: 1,
    happenedKnownTo: "day",
    about: [],
    strikes: [],
  });
  const nameless = { notebook: id, kind: "board-cut", body: { name: "", wood: "ash", plank: "P" } } as const;
  expect(() => writeEntry(nameless, effects)).toThrow(DomainError);
});
