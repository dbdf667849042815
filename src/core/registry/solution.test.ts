import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { calculationNamed } from "./all.ts";
import { calculate } from "./calculation.ts";

/** The examples that every door must give; their source stands in each file. */
const names = ["alcohol-density", "alcohol-strength", "alcohol-blend", "mix", "thin", "dry-down", "film-build"];

type Tolerance = readonly [kind: "abs" | "rel", x: number];
interface Example {
  readonly input: unknown;
  readonly output: Record<string, unknown>;
  readonly tolerance: Readonly<Record<string, Tolerance>>;
}

export function run(name: string, input: unknown): Record<string, unknown> {
  const calculation = calculationNamed(name);
  if (calculation === undefined) throw new Error(`no calculation ${name}`);
  const result = calculate(calculation, input);
  if (!result.ok) throw new Error(`${result.error.field}: ${result.error.message}`);
  return calculation.output.parse(result.value) as Record<string, unknown>;
}

function expectNear(got: unknown, expected: unknown, tolerance: Tolerance): void {
  if (typeof expected === "number") {
    const allowed = tolerance[0] === "abs" ? tolerance[1] : tolerance[1] * Math.abs(expected);
    expect(Math.abs((got as number) - expected)).toBeLessThanOrEqual(allowed);
    return;
  }
  for (const [key, value] of Object.entries(expected as object))
    expectNear((got as Record<string, unknown>)[key], value, tolerance);
}

describe("the published examples", () => {
  test.each(names)("%s", (name) => {
    const file = new URL(`../../../test/check-values/calc/${name}.json`, import.meta.url);
    const example = JSON.parse(readFileSync(file, "utf8")) as Example;
    const got = run(name, example.input);
    for (const [key, value] of Object.entries(example.output))
      expectNear(got[key], value, (example.tolerance[key] ?? example.tolerance["*"]) as Tolerance);
  });
});
