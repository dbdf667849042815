import { expect, test } from "vitest";
import { parseParts, speaksOfParts } from "./parse-parts.ts";
import { parseQuantity } from "./parse-quantity.ts";
import { quantityProblemSentence } from "./problem-sentence.ts";

const read = [
  ["1:4", 1, 4, undefined],
  ["1 : 4", 1, 4, undefined],
  ["1 to 4", 1, 4, undefined],
  ["1 part to 4 parts", 1, 4, undefined],
  ["1 part flakes to 3½ parts alcohol", 1, 3.5, undefined],
  ["4 parts of alcohol to 1 part of flakes", 1, 4, undefined],
  ["1:4 by weight", 1, 4, "weight"],
  ["1:3 (w/w)", 1, 3, "weight"],
  ["1 part to 5 parts by volume", 1, 5, "volume"],
  ["1:5 w/v", 1, 5, "weight-to-volume"],
] as const;

test.each(read)("“%s” is %d of resin to %d of solvent", (text, resin, solvent, by) => {
  expect(speaksOfParts(text)).toBe(true);
  expect(parseParts(text)).toEqual({ resin, solvent, by });
});

test.each(["1 part", "four parts to one", "1:0", "1:2:3", "1:-4", "0:4"])("“%s” is no ratio", (text) => {
  expect(parseParts(text)).toBeUndefined();
});

test("a field for a cut or an amount says that parts were typed, and which", () => {
  for (const dimensions of [["cut"], ["volume", "mass"], ["mass"]] as const) {
    const asked = parseQuantity("1 part to 4 parts", { dimensions });
    expect(asked.ok ? null : asked.error.parts).toEqual({ resin: 1, solvent: 4, by: undefined });
    const half = parseQuantity("4 parts", { dimensions });
    expect(half.ok ? null : [half.error.code, half.error.parts]).toEqual(["parts", undefined]);
    expect(half.ok ? "" : quantityProblemSentence(half.error)).toContain("to how much");
  }
});

test("a fraction and an amount by weight are not parts", () => {
  expect(["1/4 cup", "2 lb cut", "1 1/2 cup", "8 oz by weight"].map(speaksOfParts)).toEqual(
    Array(4).fill(false),
  );
});
