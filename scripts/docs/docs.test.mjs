import { expect, test } from "vitest";
import { exportedFunctions } from "./exported-functions.mjs";
import { missingFields, unitTypesIn } from "./missing-fields.mjs";
import { runExamples } from "./run-example.mjs";
import { toleranceOf, valueAgrees } from "./worked-examples.mjs";

const unitTypes = unitTypesIn('export type Kelvin = Quantity<"K">;\nexport type Name = string;');

const missingIn = (text) => exportedFunctions("air.ts", text).flatMap((f) => missingFields(f, unitTypes));

test("a function without a docstring, and one whose docstring says nothing", () => {
  expect(missingIn("export function f(x: number) { return x; }")).toEqual(["what it is"]);
  expect(missingIn("/** @returns x */\nexport const f = (x: number) => x;")).toEqual(["what it is"]);
  expect(missingIn("function f(x: number) { return x; }")).toEqual([]);
});

test("a formula says where it holds, where it comes from and what it refuses", () => {
  const bare = "/** Twice. */\nexport function f(t: Kelvin) { return inRange('t', t, r) * 2; }";
  expect(missingIn(bare)).toEqual(["Valid:", "Source:, or `common practice`, or `from memory`", "@throws"]);
  const whole =
    "/** Twice.\n *\n *     y = 2·t\n *\n * @throws DomainError\n * Valid: always\n * Source: common practice\n */\n";
  expect(missingIn(`${whole}export const f = (t: Kelvin) => inRange('t', t, r) * 2;`)).toEqual([]);
});

test("a printed equation makes a formula of a function of plain numbers", () => {
  const text = "/** Twice.\n *\n *     y = 2·x\n */\nexport const f = (x: number) => x * 2;";
  expect(missingIn(text)).toHaveLength(2);
});

test("the digits written set the tolerance", () => {
  expect(toleranceOf("3169.2")).toBeCloseTo(0.05);
  expect(toleranceOf("12")).toBe(0.5);
  expect(toleranceOf("1.5e-3")).toBeCloseTo(0.00005);
  expect(valueAgrees("3169.2", 3169.2499)).toBe(true);
  expect(valueAgrees("3169.2", 3169.2501)).toBe(false);
  expect(valueAgrees("-0.10", -0.1049)).toBe(true);
  expect(valueAgrees("-0.10", 0.1)).toBe(false);
  expect(valueAgrees("1.0", Number.NaN)).toBe(false);
  expect(valueAgrees("1", "1")).toBe(false);
});

test("lists are compared in full, objects by the fields named", () => {
  expect(valueAgrees('{ a: [1, 2], b: "x" }', { a: [1, 2], b: "x", c: 3 })).toBe(true);
  expect(valueAgrees("[1, 2]", [1, 2, 3])).toBe(false);
  expect(valueAgrees("{ a: null }", { a: undefined })).toBe(false);
  expect(valueAgrees("{ a: 1 }", null)).toBe(false);
});

const wrongs = (doc, scope) => runExamples(doc, scope).map(({ wrong }) => wrong);

test("an example that holds passes, over several lines and with what it sets up", () => {
  const doc =
    "Half.\n@example\nconst four = 4;\nhalf(\n  four,\n) // => 2.0\nhalf(four) + 1 // => 3\n\nSource: none";
  expect(wrongs(doc, { half: (x) => x / 2 })).toEqual([undefined, undefined]);
});

test("an example fails when the value is another, when it throws, and when it promises nothing", () => {
  expect(wrongs("@example\nhalf(4) // => 2.1", { half: (x) => x / 2 })).toEqual(["2, and not 2.1"]);
  expect(wrongs("@example\nhalve(4) // => 2", {})[0]).toContain("ReferenceError");
  expect(wrongs("@example\nhalf(4)", { half: (x) => x / 2 })).toEqual(["no `// => value` after it"]);
});
