import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { DomainError } from "../domain-error.ts";
import { metre, volumeFraction } from "../units.ts";
import { contrastRatio, relativeLuminance } from "./contrast.ts";
import {
  type Finish,
  finishColour,
  finishInk,
  finishToWriteOn,
  ink,
  transmittance,
  woodUnderFilm,
} from "./finish-colour.ts";
import { absorptionOfBlend, absorptionOfGrade, type ResinGrade, resinGrades } from "./resin-grades.ts";
import { hexFromSrgb, srgbFromHex } from "./srgb.ts";

/** Volume solids by mass balance, worked by hand: 1 lb/US gal is 119.826 g/L, resin 1205 g/L. */
const finish = (grade: ResinGrade, cutLbPerGal: number): Finish => {
  const resin = (cutLbPerGal * 119.826) / 1205;
  const absorption = absorptionOfGrade(grade);
  if (absorption === undefined) throw new Error(grade);
  return { absorption, solids: volumeFraction(resin / (1 + resin)) };
};
const day = { grounds: [srgbFromHex("#ECEFEA"), srgbFromHex("#F9FAF7")], text: "darker" } as const;
const dark = { grounds: [srgbFromHex("#12181E"), srgbFromHex("#1B232A")], text: "lighter" } as const;
const dim = { grounds: [srgbFromHex("#0A0907"), srgbFromHex("#15120D")], text: "lighter" } as const;

/** The furthest that any channel lies from a printed colour, in steps of 255. */
function steps(hex: string, printed: string): number {
  const [a, b] = [hex, printed].map((h) => [1, 3, 5].map((i) => Number.parseInt(h.slice(i, i + 2), 16)));
  return Math.max(...[0, 1, 2].map((i) => Math.abs((a?.[i] as number) - (b?.[i] as number))));
}
const worst = (colour: Parameters<typeof contrastRatio>[0], grounds: readonly (typeof colour)[]) =>
  Math.min(...grounds.map((g) => contrastRatio(colour, g)));

// The visual direction prints its colours to whole steps of 255; each grade's absorption is taken from one printed
// sample, so the others differ by that rounding: at most 2 steps were found in a fill.
describe("the fill", () => {
  test.each([
    ["lemon", 1, "#F3DC8A"],
    ["lemon", 1.5, "#F1D16B"],
    ["lemon", 2, "#EFC752"],
    ["lemon", 3, "#EBB634"],
    ["seedlac", 2, "#DF9420"],
    ["garnet", 2, "#CB6913"],
    ["platina", 1, "#F7F3E0"],
  ] as const)("%s at %d lb is the printed %s", (grade, cut, printed) => {
    expect(steps(hexFromSrgb(finishColour(finish(grade, cut))), printed)).toBeLessThanOrEqual(2);
  });

  test("ink on it, or white, as printed", () => {
    const on = (grade: ResinGrade, cut: number, text = ink) =>
      contrastRatio(finishColour(finish(grade, cut)), text);
    for (const [got, printed] of [
      [on("lemon", 1.5), 10.9],
      [on("lemon", 3), 8.7],
      [on("seedlac", 2), 6.5],
      [on("garnet", 1.5), 5.4],
      [on("garnet", 2), 4.3],
      [on("garnet", 2, srgbFromHex("#FFFFFF")), 3.8],
      [on("garnet", 3, srgbFromHex("#FFFFFF")), 5.1],
    ] as const)
      expect(Math.abs(got - printed)).toBeLessThanOrEqual(0.12);
  });
});

describe("the ink", () => {
  test.each([
    // The printed colours were searched in another way; lightness and hue agree, chroma to a few steps.
    ["lemon", 1.5, "#95610C", 4.5, 12],
    ["seedlac", 2, "#B43000", 5.4, 1],
    ["garnet", 2, "#870A00", 8.7, 1],
    ["platina", 1, "#776C3D", 4.5, 4],
  ] as const)("%s at %d lb by day is near %s", (grade, cut, printed, contrast, within) => {
    const colour = finishInk(finish(grade, cut), day);
    expect(steps(hexFromSrgb(colour), printed)).toBeLessThanOrEqual(within);
    expect(Math.abs(worst(colour, day.grounds) - contrast)).toBeLessThanOrEqual(0.051);
  });

  test.each([
    ["lemon", 1.5, 10.7],
    ["seedlac", 2, 6.4],
    ["platina", 1, 14.3],
  ] as const)("%s at %d lb in the dark has the printed contrast %d", (grade, cut, contrast) => {
    expect(Math.abs(worst(finishInk(finish(grade, cut), dark), dark.grounds) - contrast)).toBeLessThanOrEqual(
      0.1,
    );
  });

  test("every grade at any cut can be read by day, in the dark and in the dim, by the guidelines' own ratio", () => {
    const cut = fc.double({ min: 0, max: 6, noNaN: true });
    fc.assert(
      fc.property(cut, fc.constantFrom(...resinGrades), (lb, { grade }) => {
        for (const light of [day, dark, dim])
          expect(worst(finishInk(finish(grade, lb), light), light.grounds)).toBeGreaterThanOrEqual(4.5);
        const { fill, text } = finishToWriteOn(finish(grade, lb));
        expect(contrastRatio(fill, text)).toBeGreaterThanOrEqual(4.5);
      }),
    );
  });

  test("grounds on which nothing can be read are refused", () => {
    const grey = { grounds: [srgbFromHex("#000000"), srgbFromHex("#FFFFFF")], text: "darker" } as const;
    expect(() => finishInk(finish("lemon", 1), grey)).toThrow(DomainError);
  });
});

test("garnet at 2 lb: neither ink nor white reads, so a shorter way through the jar is shown", () => {
  const { fill, text } = finishToWriteOn(finish("garnet", 2));
  expect(text).toBe(ink);
  expect(Math.abs(contrastRatio(fill, ink) - 4.5)).toBeLessThan(0.01);
});

test("light: all of it through nothing, and twice the way is the square", () => {
  const f = finish("orange", 2);
  expect(transmittance(f, metre(0))).toEqual([1, 1, 1]);
  const [once, twice] = [transmittance(f, metre(0.01)), transmittance(f, metre(0.02))];
  once.forEach((t, i) => {
    expect(Math.abs(t ** 2 - (twice[i] as number))).toBeLessThan(1e-12);
  });
});

test("wood darkens under more film, never turns to another hue than the resin's, and is itself under none", () => {
  const cherry = srgbFromHex("#B98A62");
  const absorption = finish("lemon", 1).absorption;
  expect(hexFromSrgb(woodUnderFilm(cherry, absorption, metre(0)))).toBe("#B98A62");
  const luminances = [0, 2e-5, 4e-5, 8e-5].map((d) =>
    relativeLuminance(woodUnderFilm(cherry, absorption, metre(d))),
  );
  expect([...luminances].sort((a, b) => b - a)).toEqual(luminances);
});

describe("grades", () => {
  test("stand from palest to darkest at one cut, as the trade orders them", () => {
    const luminances = resinGrades.map(({ grade }) => relativeLuminance(finishColour(finish(grade, 2))));
    expect([...luminances].sort((a, b) => b - a)).toEqual(luminances);
  });

  test("are found in a shop's words, and not where there is none", () => {
    expect(absorptionOfGrade("Dewaxed lemon, lot 7")).toBe(absorptionOfGrade("lemon"));
    expect(absorptionOfGrade("mastic")).toBeUndefined();
  });

  test("a blend lies between its parts", () => {
    const [lemon, garnet] = [finish("lemon", 1).absorption, finish("garnet", 1).absorption];
    const half = absorptionOfBlend([
      { absorption: lemon, share: 2 },
      { absorption: garnet, share: 2 },
    ]);
    expect(Math.abs(half.blue - (lemon.blue + garnet.blue) / 2)).toBeLessThan(1e-12);
  });
});
