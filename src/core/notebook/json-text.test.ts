import fc from "fast-check";
import { expect, test } from "vitest";
import { deepestNesting, readShallowJson, splitJsonArray } from "./json-text.ts";

const space = fc.stringMatching(/^[ \n\r\t]{0,3}$/);

test("splitJsonArray: the elements' texts come out as they went in, whatever they hold", () => {
  fc.assert(
    fc.property(fc.array(fc.tuple(space, fc.json(), space)), space, (elements, around) => {
      const inside = elements.map(([before, text, after]) => before + text + after).join(",");
      const list = `${around}[${inside}]${around}`;
      expect(splitJsonArray(list)).toEqual({ ok: true, value: elements.map(([, text]) => text) });
    }),
  );
});

test("splitJsonArray: what JSON.parse takes for a list splits into what JSON.parse reads of it, and nothing else does", () => {
  const pieces = fc.constantFrom(
    "[",
    "]",
    "{",
    "}",
    ",",
    ":",
    '"',
    '\\"',
    "\\\\",
    "1.50",
    "a",
    " ",
    "null",
    '"k":',
  );
  const parsed = (text: string): unknown => {
    try {
      return JSON.parse(text);
    } catch {
      return undefined;
    }
  };
  fc.assert(
    fc.property(fc.array(pieces, { maxLength: 14 }), (parts) => {
      const text = `[${parts.join("")}`;
      const whole = parsed(text);
      const split = splitJsonArray(text);
      const values = split.ok ? split.value.map(parsed) : [undefined];
      expect(values.includes(undefined) ? undefined : values).toEqual(whole);
    }),
    { numRuns: 5_000 },
  );
});

test.each([
  ["", "square brackets"],
  ["{}", "square brackets"],
  ["[1", "no end"],
  ['["a]', "no end"],
  ["[1,,2]", "empty"],
  ["[,]", "empty"],
  ["[1,]", "empty"],
  ["[1] 2", "follows"],
  ["[1}", "follows"],
])("splitJsonArray: %s is refused as unreadable", (text, because) => {
  const split = splitJsonArray(text);
  expect(split).toMatchObject({ ok: false, error: { code: "unreadable" } });
  expect(split.ok ? "" : split.error.message).toContain(because);
});

test("splitJsonArray: white space that JSON does not know is no white space", () => {
  const split = splitJsonArray("[\u00a01]");
  expect(split).toEqual({ ok: true, value: ["\u00a01"] });
  expect(readShallowJson("\u00a01")).toMatchObject({ ok: false });
});

test("readShallowJson: nesting at the limit is read, one deeper is refused, brackets in strings do not count", () => {
  const nested = (depth: number) => "[".repeat(depth) + "]".repeat(depth);
  expect(readShallowJson(nested(deepestNesting)).ok).toBe(true);
  expect(readShallowJson(nested(deepestNesting + 1))).toMatchObject({
    ok: false,
    error: { code: "too-deep" },
  });
  expect(readShallowJson(nested(1_000_000))).toMatchObject({ ok: false, error: { code: "too-deep" } });
  expect(readShallowJson(`"${"[".repeat(500)}\\\\"`).ok).toBe(true);
});
