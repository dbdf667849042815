import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { z } from "zod";
import { calculations } from "../../src/core/registry/all.ts";
import { calculate } from "../../src/core/registry/calculation.ts";
import { jsonSchemaOf } from "../../src/core/registry/json-schema.ts";
import { valueAgrees } from "../docs/worked-examples.mjs";
import { fieldsOf } from "./fields.mjs";
import { readSection, referencePage } from "./page.mjs";

const core = { calculate, jsonSchemaOf };

test("docs/calculations.md is as new as the calculations: node scripts/reference-page.mjs writes it", () => {
  const kept = readFileSync(new URL("../../docs/calculations.md", import.meta.url), "utf8");
  expect(kept).toBe(referencePage(calculations, core));
});

test.each(calculations)(
  "$name: the stated output of the example comes out, to the digits stated",
  (calculation) => {
    const result = calculate(calculation, calculation.example.input);
    expect(result.ok).toBe(true);
    expect(valueAgrees(JSON.stringify(calculation.example.output), result.value)).toBe(true);
  },
);

const made = {
  name: "double",
  purpose: "Twice a number.",
  input: z.strictObject({
    x: z.number().min(0).max(10).describe("how many"),
    unit: z.enum(["g", "kg"]).optional(),
    parts: z
      .array(z.union([z.strictObject({ a: z.int() }), z.strictObject({ a: z.int(), b: z.string() })]))
      .min(1),
    shares: z.record(z.string(), z.number().positive()).default({}),
  }),
  output: z.object({ twice: z.number(), third: z.number().nullable() }),
  run: ({ x }) => ({ twice: 2 * x, third: x / 3 }),
  sources: ["arithmetic"],
  example: { input: { x: 2, parts: [{ a: 1 }] }, output: { twice: 4 } },
};

test("fields: paths into lists and alternatives, limits, names, what is needed", () => {
  const rows = fieldsOf(jsonSchemaOf(made).input).map((f) => [f.path, f.kind, f.limits, f.isRequired]);
  expect(rows).toEqual([
    ["x", "number", "0 or more, at most 10", true],
    ["unit", "one of the names", "`g` `kg`", false],
    ["parts", "list of: object", "1 or more of them", true],
    ["parts[].a", "whole number", "", true],
    ["parts[].b", "text", "", true],
    ["shares", "object", "{} when left out", false],
    ["shares.…", "number", "more than 0", false],
  ]);
});

test("a page is read back as it was printed, and a refused example is an error", () => {
  const page = referencePage([made], core);
  const { input, output, fields } = readSection(page, "double");
  expect({ input, output }).toEqual({ input: made.example.input, output: { twice: 4, third: 0.666667 } });
  expect(fields).toContain("parts[].b");
  expect(readSection(page, "halve")).toBeUndefined();
  expect(() => referencePage([{ ...made, example: { input: { x: 11, parts: [{ a: 1 }] } } }], core)).toThrow(
    "out of range",
  );
});
