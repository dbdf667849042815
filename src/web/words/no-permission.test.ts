import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";

/** Words by which a program would vouch for what only a supplier, a code or a practice may. */
const vouching =
  /\b(?:is|are|be|quite|perfectly|now) safe\b|\bsafe (?:to|for|enough)\b|food[- ](?:safe|grade)|\bdrinkable\b|\bnon-?toxic\b|\bharmless\b/i;

const folder = join(import.meta.dirname, "en");
const files = readdirSync(folder, { recursive: true, encoding: "utf8" }).filter((name) =>
  name.endsWith(".ts"),
);

test("no page vouches for safety", () => {
  expect(files.length).toBeGreaterThan(5);
  const found = files.flatMap((name) =>
    readFileSync(join(folder, name), "utf8")
      .split("\n")
      .filter((line) => vouching.test(line))
      .map((line) => `${name}: ${line.trim()}`),
  );
  expect(found).toEqual([]);
});

test("the words that would be caught are caught", () => {
  for (const said of ["It is safe to pad indoors.", "food-grade", "a harmless solvent"])
    expect(vouching.test(said)).toBe(true);
  expect(vouching.test("the supplier’s safety data sheet comes first")).toBe(false);
});

test("where a figure of danger stands, it is said to be an estimate", () => {
  expect(readFileSync(join(folder, "cautions.ts"), "utf8")).toContain("An estimate, not a clearance");
});
