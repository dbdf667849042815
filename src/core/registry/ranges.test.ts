import { describe, expect, test } from "vitest";
import { calculations } from "./all.ts";
import { calculate } from "./calculation.ts";

type Path = readonly (string | number)[];

function numbersIn(x: unknown, path: Path = []): readonly Path[] {
  if (typeof x === "number") return [path];
  if (typeof x !== "object" || x === null) return [];
  return Object.entries(x).flatMap(([key, inner]) =>
    numbersIn(inner, [...path, Array.isArray(x) ? Number(key) : key]),
  );
}

function withNumber(x: unknown, [key, ...rest]: Path, number: number): unknown {
  if (key === undefined) return number;
  if (Array.isArray(x)) return x.map((inner, i) => (i === key ? withNumber(inner, rest, number) : inner));
  const fields = x as Record<string, unknown>; // a path leads through objects and lists only
  return { ...fields, [key]: withNumber(fields[key], rest, number) };
}

/** In the person's own unit, of which no range is known: what matters on a scale may be any size. */
const anySize = new Set(["verdict response.matters"]);

const cases = calculations.flatMap((calculation) =>
  numbersIn(calculation.example.input).map((path) => ({
    calculation,
    path,
    says: `${calculation.name} ${path.join(".")}`,
  })),
);

const flagsOf = (output: unknown): readonly unknown[] =>
  (output as { readonly flags?: readonly unknown[] }).flags ?? [];

describe("no calculation answers in silence for a quantity that nothing has", () => {
  test.each(cases.filter(({ says }) => !anySize.has(says)))("$says", ({ calculation, path }) => {
    const usual = calculate(calculation, calculation.example.input);
    for (const absurd of [-1e12, 1e12]) {
      const found = calculate(calculation, withNumber(calculation.example.input, path, absurd));
      if (found.ok) {
        const flags = flagsOf(found.value);
        expect(flags.length, `${absurd} is answered without a flag`).toBeGreaterThan(0);
        expect(flags, `${absurd} is answered with no flag of its own`).not.toEqual(
          usual.ok && flagsOf(usual.value),
        );
      } else {
        expect(found.error.field.split(/[.[]/)[0]).toBe(path[0]);
        expect(found.error.message.length).toBeGreaterThan(10);
      }
    }
  });
});
