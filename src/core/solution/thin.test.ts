import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { checkTable } from "../../../test/check-table.ts";
import { DomainError } from "../domain-error.ts";
import {
  type Cut,
  cubicMetre,
  cutFromPoundsPerUsGallon,
  kilogram,
  massFraction,
  poundsPerUsGallonFromCut,
  volumeFraction,
} from "../units.ts";
import { aqueous, type Composition } from "./composition.ts";
import { densityOfSolvent } from "./density.ts";
import {
  blendOfSolutions,
  cutOfSolution,
  filteredSolution,
  massOfSolution,
  partOfSolution,
  type Solution,
  solutionOfCut,
  volumeOfSolution,
} from "./solution.ts";
import { massFractionFromVolumeFraction, strengthAt20C } from "./strength.ts";
import { simpleRatio, thinTo } from "./thin.ts";

const labelled = (alcohol: "ethanol" | "isopropanol", q: number): Composition =>
  aqueous(alcohol, massFractionFromVolumeFraction(alcohol, volumeFraction(q), strengthAt20C));
const ethanol95 = labelled("ethanol", 0.95);
const lb = cutFromPoundsPerUsGallon;
const litre = { volume: cubicMetre(1e-3), temperature: strengthAt20C };

/** Volumes of solvent to one of stock. */
function parts(from: number, to: number): number {
  const { added } = thinTo(solutionOfCut(lb(from), ethanol95, litre), lb(to), ethanol95);
  return added / densityOfSolvent(ethanol95, strengthAt20C).value / 1e-3;
}

describe("the published tables", () => {
  test("3 to 1 lb takes 1.54 parts, not 2", () => {
    expect(parts(3, 1)).toBeCloseTo(1.54, 2);
    const simple = simpleRatio(solutionOfCut(lb(3), ethanol95, litre), lb(1), ethanol95, strengthAt20C);
    expect(simple.addedVolume).toBeCloseTo(2e-3, 9);
    expect(poundsPerUsGallonFromCut(simple.cut)).toBeCloseTo(0.834, 3);
  });

  // A magazine's chart and a trade table; rows that mass balance shows to be wrong say so in their note.
  const rows = checkTable("solutions/shellac_cut_reduction.csv");
  const isWrong = (note: string | undefined): boolean => /off by|WRONG/.test(note ?? "");
  test.each(rows.filter((r) => !isWrong(r.note)))("$from_cut_lb_gal to $to_cut_lb_gal lb: $source", (row) => {
    const got = parts(Number(row.from_cut_lb_gal), Number(row.to_cut_lb_gal));
    expect(Math.abs(got / Number(row.parts_alcohol_per_part_printed) - 1)).toBeLessThanOrEqual(0.12);
  });
  test.each(rows.filter((r) => isWrong(r.note)))(
    "$from_cut_lb_gal to $to_cut_lb_gal lb is wrong as printed",
    (row) => {
      const got = parts(Number(row.from_cut_lb_gal), Number(row.to_cut_lb_gal));
      expect(Math.abs(got / Number(row.parts_alcohol_per_part_printed) - 1)).toBeGreaterThan(0.12);
    },
  );
});

const stocks = fc
  .record({
    cut: fc.double({ min: 1, max: 8, noNaN: true }),
    strength: fc.double({ min: 0.6, max: 1, noNaN: true }),
    alcohol: fc.constantFrom("ethanol", "isopropanol", "n-propanol"),
    grams: fc.double({ min: 10, max: 5000, noNaN: true }),
  })
  .map(({ cut, strength, alcohol, grams }) =>
    solutionOfCut(lb(cut), aqueous(alcohol as "ethanol", massFraction(strength)), {
      mass: kilogram(grams / 1e3),
    }),
  );
const solvents = fc.constantFrom(
  ethanol95,
  labelled("isopropanol", 0.99),
  aqueous("ethanol", massFraction(1)),
);
const shares = fc.double({ min: 0.05, max: 0.95, noNaN: true });

const near = (got: number, expected: number, relative = 1e-9): void =>
  expect(Math.abs(got / expected - 1)).toBeLessThan(relative);

describe("mass is kept", () => {
  test("through any chain of thinning, blending, filtering and pouring off", () => {
    fc.assert(
      fc.property(stocks, stocks, solvents, shares, shares, (one, other, solvent, weaker, poured) => {
        const { added, result } = thinTo(one, (cutOfSolution(one) * weaker) as Cut, solvent);
        near(massOfSolution(result), massOfSolution(one) + added);
        const blend = blendOfSolutions([result, other]);
        near(massOfSolution(blend), massOfSolution(result) + massOfSolution(other));
        near(blend.resin, one.resin + other.resin);
        const off = partOfSolution(blend, poured);
        const left = partOfSolution(blend, 1 - poured);
        near(massOfSolution(off) + massOfSolution(left), massOfSolution(blend));
        near(cutOfSolution(off), cutOfSolution(blend));
        near(blend.liquid.mass, one.liquid.mass + added + other.liquid.mass);
      }),
    );
  });

  test("thinning twice is thinning once", () => {
    fc.assert(
      fc.property(stocks, solvents, shares, shares, (stock, solvent, first, second) => {
        const cut = cutOfSolution(stock);
        const [half, target] = [(cut * first) as Cut, (cut * first * second) as Cut];
        const once = thinTo(stock, target, solvent);
        const step = thinTo(stock, half, solvent);
        const twice = thinTo(step.result, target, solvent);
        near(step.added + twice.added, once.added, 1e-8);
        near(cutOfSolution(twice.result), target);
      }),
    );
  });

  test("a filter keeps the insolubles, and the wax that has settled", () => {
    const jar: Solution = {
      ...solutionOfCut(lb(2), ethanol95, litre),
      wax: kilogram(0.008),
      insoluble: kilogram(0.002),
    };
    const strained = filteredSolution(jar, { wax: false });
    near(strained.resin, jar.resin - 0.002);
    expect(strained.wax).toBe(jar.wax);
    const clear = filteredSolution(jar, { wax: true });
    near(clear.resin, jar.resin - 0.01);
    expect([clear.wax, clear.insoluble]).toEqual([0, 0]);
    near(clear.resinVolume / clear.resin, jar.resinVolume / jar.resin);
    expect(volumeOfSolution(clear, strengthAt20C)).toBeLessThan(volumeOfSolution(jar, strengthAt20C));
  });
});

describe("what is refused", () => {
  const stock = solutionOfCut(lb(2), ethanol95, litre);
  test.each([2.001, 0, Number.NaN])("thinning a 2 lb stock to %d", (to) => {
    expect(() => thinTo(stock, (to * 119.826427) as Cut, ethanol95)).toThrow(DomainError);
  });
  test("its own cut needs nothing", () => {
    expect(thinTo(stock, lb(2), ethanol95).added).toBe(0);
  });
});
