import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { z } from "zod";
import { calculations } from "../../core/registry/all.ts";
import { calculate, defineCalculation } from "../../core/registry/calculation.ts";
import { jsonSchemaOf } from "../../core/registry/json-schema.ts";
import { fieldsOf, isListed, pathsIn } from "./fields.ts";
import { readSection, referencePage } from "./page.ts";
import { unitOf } from "./unit-of.ts";

test("docs/calculations.md is as new as the calculations: node scripts/reference-page.mjs writes it", () => {
  const kept = readFileSync(new URL("../../../docs/calculations.md", import.meta.url), "utf8");
  expect(kept).toBe(referencePage(calculations));
});

/** Half a unit of the last digit that is written; the stated keys are those that are compared. */
const toStatedDigits = (stated: number): number => 0.5 * 10 ** -(String(stated).split(".")[1]?.length ?? 0);

function wrongIn(stated: unknown, got: unknown, path: string): string[] {
  if (typeof stated === "number")
    return typeof got === "number" && Math.abs(got - stated) <= toStatedDigits(stated) * (1 + 1e-9)
      ? []
      : [path];
  if (typeof stated !== "object" || stated === null) return stated === (got ?? null) ? [] : [path];
  return Object.entries(stated).flatMap(([key, inner]) =>
    wrongIn(inner, (got as Record<string, unknown> | undefined)?.[key], `${path}.${key}`),
  );
}

test.each(calculations)(
  "$name: the stated output of the example comes out, to the digits stated",
  (calculation) => {
    const result = calculate(calculation, calculation.example.input);
    if (!result.ok) throw new Error(result.error.message);
    expect(Object.keys(calculation.example.output as object)).not.toEqual([]);
    expect(wrongIn(calculation.example.output, result.value, "")).toEqual([]);
  },
);

const parts = z.array(
  z.union([z.strictObject({ a: z.int() }), z.strictObject({ a: z.int(), b: z.string() })]),
);
const made = defineCalculation({
  name: "double",
  purpose: "Twice a number.",
  input: z.strictObject({
    x: z.number().min(0).max(10).describe("how many"),
    unit: z.enum(["g", "kg"]).optional(),
    parts: parts.min(1),
    shares: z.record(z.string(), z.number().positive()).default({}),
  }),
  output: z.object({ twice: z.number(), third: z.number().nullable() }),
  run: ({ x }) => ({ twice: 2 * x, third: x / 3 }),
  sources: ["arithmetic"],
  example: { input: { x: 2, parts: [{ a: 1 }] }, output: { twice: 4 } },
});

test("fields: paths into lists and alternatives, limits, names, what is needed", () => {
  const rows = fieldsOf(jsonSchemaOf(made).input).map((f) => [f.path, f.kind, f.limits, f.isRequired]);
  expect(rows).toEqual([
    ["x", "number", "0 or more, at most 10", true],
    ["unit", "one of the names", "`g` `kg`", false],
    ["parts", "list of: object", "1 or more of them", true],
    ["parts[].a", "whole number", "", true],
    ["parts[].b", "text", "", false],
    ["shares", "object", "{} when left out", false],
    ["shares.…", "number", "more than 0", false],
  ]);
});

test("a value's paths are found among the listed ones, and others are not", () => {
  const listed = fieldsOf(jsonSchemaOf(made).input).map((f) => f.path);
  const paths = pathsIn({ x: 2, parts: [{ a: 1 }, { a: 1, b: "y" }], shares: { wax: 0.2 } });
  expect(paths).toEqual(["x", "parts", "parts[].a", "parts[].b", "shares", "shares.wax"]);
  expect(paths.every((path) => isListed(path, listed))).toBe(true);
  expect(isListed("parts[].c", listed)).toBe(false);
});

test("a page is read back as it was printed, and a refused example is an error", () => {
  const page = referencePage([made]);
  const section = readSection(page, "double");
  expect([section?.input, section?.output]).toEqual([made.example.input, { twice: 4, third: 0.666667 }]);
  expect(section?.fields).toContain("parts[].b");
  expect(readSection(page, "halve")).toBeUndefined();
  const refused = defineCalculation({
    ...made,
    example: { input: { x: 11, parts: [{ a: 1 }], shares: {} }, output: {} },
  });
  expect(() => referencePage([refused])).toThrow("out of range");
});

test.each([
  ["solvent.atTemperatureC", "°C"],
  ["cutLbPerGal", "lb/US gal"],
  ["parts[].massG", "g"],
  ["wetUm", "µm"],
  ["volumeFraction20C", "0–1"],
  ["densityKgM3", "kg/m³"],
  ["limits", ""],
  ["L", ""],
])("the unit of %s is %j", (path, unit) => {
  expect(unitOf(path)).toBe(unit);
});
