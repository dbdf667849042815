import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { refusal, run } from "../../../test/run-calculation.ts";

const ethanol95 = { alcohol: "ethanol", volumeFraction: 0.95 };
const isopropanol = { alcohol: "isopropanol", volumeFraction: 0.99 };
const jar = { solutionMl: 500, cutLbPerGal: 2.6, solvent: ethanol95 };
const alcohol = { name: "spirit", solvent: ethanol95 };
const flakes = { name: "flakes", resins: [{ moistureMassFraction: 0.02 }] };
const thinJar = { name: "L3", jar: { solutionMl: 900, cutLbPerGal: 1, solvent: ethanol95 } };
const strongJar = { name: "L4", jar: { solutionG: 400, cutLbPerGal: 4, solvent: isopropanol } };

interface Way {
  readonly name: string;
  readonly addG: number;
  readonly addMl: number | null;
  readonly suffices: boolean | null;
  readonly missingG: number;
  readonly fits: boolean | null;
  readonly pourOffFirst: { readonly ml: number; readonly g: number; readonly thenAddG: number } | null;
  readonly result: { readonly solutionG: number; readonly solutionMl: number; readonly cutLbPerGal: number };
  readonly simpleRatioWouldGive: { readonly addG: number; readonly cutLbPerGal: number };
  readonly cutStandardUncertainty: number;
}
const ways = (input: unknown): readonly Way[] => run("correct-jar", input).ways as readonly Way[];

describe("a jar that came out too strong", () => {
  const input = { jar, toCutLbPerGal: 2, shelf: [alcohol, flakes, thinJar, strongJar], vesselMl: 750 };

  // Trade rule: parts of alcohol to one of solution = (c1/c2 − 1)/(1 + 0.1·c1), here 0.238.
  test("is thinned by alcohol or by a weaker jar, never by flakes or a stronger one", () => {
    const [spirit, weak, ...more] = ways(input);
    expect(more).toEqual([]);
    expect((spirit?.addMl ?? 0) / 500).toBeCloseTo((2.6 / 2 - 1) / (1 + 0.1 * 2.6), 3);
    expect(weak?.name).toBe("L3");
    expect(spirit?.result.cutLbPerGal).toBeCloseTo(2, 9);
    expect(weak?.result.cutLbPerGal).toBeCloseTo(2, 9);
    const cannot = run("correct-jar", input).cannot as { name: string; because: string }[];
    expect(cannot.map(({ name }) => name)).toEqual(["flakes", "L4"]);
    expect(cannot[1]?.because).toContain("2.6");
  });

  test("says what the simple ratio would have given, which is too weak", () => {
    const [spirit, weak] = ways(input);
    expect(spirit?.simpleRatioWouldGive.cutLbPerGal).toBeCloseTo(1.887, 3);
    expect(weak?.simpleRatioWouldGive.cutLbPerGal).toBeLessThan(2);
  });

  test("does not fit: so much is poured off first, and the rest comes to the same cut", () => {
    const [, weak] = ways({ ...input, vesselMl: 600 });
    const off = weak?.pourOffFirst;
    expect(weak?.fits).toBe(false);
    const [again] = ways({
      ...input,
      jar: { ...jar, solutionMl: 500 - (off?.ml ?? 0) },
      shelf: [thinJar],
      vesselMl: 600,
    });
    expect(again?.addG).toBeCloseTo(off?.thenAddG ?? 0, 6);
    expect(again?.result.solutionMl).toBeCloseTo(540, 6); // a tenth left empty
    expect(again?.fits).toBe(true);
  });

  test("says what is missing on the shelf", () => {
    const [spirit] = ways({ ...input, shelf: [{ ...alcohol, haveG: 50 }] });
    expect(spirit?.suffices).toBe(false);
    expect(spirit?.missingG).toBeCloseTo((spirit?.addG ?? 0) - 50, 9);
    expect(ways({ ...input, shelf: [alcohol] })[0]?.suffices).toBeNull();
  });
});

describe("a jar that came out too weak", () => {
  const weak = { jar: { ...jar, cutLbPerGal: 1.5 }, toCutLbPerGal: 2 };

  // Mass balance by hand: 500 mL of 1.5 lb is 500/(1 + 0.149) = 435.1 mL of solvent; half a pound more to the gallon
  // of it is 59.91 g to the litre: 26.07 g of dry resin.
  test("takes dry flakes by the solvent that is in it, not by its volume", () => {
    const dry = { name: "flakes", resins: [{}] };
    const [way] = ways({ ...weak, shelf: [dry] });
    expect(way?.addG).toBeCloseTo(0.05991 * (500 / (1 + (1.5 * 119.826) / 1205)) * 1, 1);
    expect(way?.addMl).toBeNull();
    expect(way?.simpleRatioWouldGive.addG).toBeCloseTo(0.059913 * 500, 2);
    expect(way?.simpleRatioWouldGive.cutLbPerGal).toBeGreaterThan(2);
  });

  test("takes more of flakes that are damp", () => {
    const damp = ways({ ...weak, shelf: [flakes] })[0]?.addG ?? 0;
    const dry = ways({ ...weak, shelf: [{ name: "flakes", resins: [{}] }] })[0]?.addG ?? 0;
    expect(damp / dry).toBeGreaterThan(1 / 0.98);
  });

  test("takes a stronger jar of another alcohol", () => {
    const [way] = ways({ ...weak, shelf: [strongJar] });
    expect(way?.result.cutLbPerGal).toBeCloseTo(2, 9);
    expect(way?.suffices).toBe(true);
  });
});

test("mass is kept, and the cut is met, whatever is added", () => {
  const cut = fc.double({ min: 0.5, max: 6, noNaN: true });
  fc.assert(
    fc.property(
      cut,
      cut,
      cut,
      fc.double({ min: 20, max: 5000, noNaN: true }),
      (from, to, other, solutionG) => {
        fc.pre(Math.abs(from - to) > 0.01 && Math.abs(other - to) > 0.01);
        const start = { solutionG, cutLbPerGal: from, solvent: isopropanol };
        const shelf = [alcohol, flakes, { name: "J", jar: { ...jar, cutLbPerGal: other } }];
        for (const way of ways({ jar: start, toCutLbPerGal: to, shelf })) {
          expect(way.result.cutLbPerGal / to).toBeCloseTo(1, 9);
          expect(way.result.solutionG / (solutionG + way.addG)).toBeCloseTo(1, 9);
        }
      },
    ),
    { numRuns: 200, seed: 7 },
  );
});

test("what is refused", () => {
  const input = { jar, toCutLbPerGal: 2.6, shelf: [alcohol] };
  expect(refusal("correct-jar", input)).toMatchObject({ field: "toCutLbPerGal", code: "contradiction" });
  expect(refusal("correct-jar", { ...input, toCutLbPerGal: 2, shelf: [] }).field).toBe("shelf");
  expect(
    refusal("correct-jar", { ...input, toCutLbPerGal: 2, shelf: [{ ...alcohol, haveG: 1, haveMl: 1 }] })
      .field,
  ).toBe("shelf[0].haveMl");
  expect(
    refusal("correct-jar", { ...input, toCutLbPerGal: 2, shelf: [{ ...alcohol, haveG: -1 }] }).field,
  ).toBe("shelf[0].haveG");
});

test("how sure each way is: flakes by the scale, alcohol by the jug", () => {
  const instruments = { scaleG: 0.5, jugMl: 5 };
  const weighed = { solutionG: 450, cutLbPerGal: 1.5, cutStandardUncertainty: 0.05, solvent: ethanol95 };
  const [way] = ways({ jar: weighed, toCutLbPerGal: 2, shelf: [flakes], instruments });
  // the cut's own 0.05 moves with the jar, the flakes' half gram by hand: 0.98·0.5 g in 395 mL·(1 gal/3785 mL)/453.6 g
  const solventL = 0.45 / (0.81138 + 1.5 * 0.119826);
  const scale = (0.98 * 0.5) / 119.826 / solventL;
  expect(way?.cutStandardUncertainty).toBeCloseTo(Math.hypot(0.05, scale), 2);
});

describe("a series of working cuts", () => {
  const plan = {
    stock: { solutionMl: 1000, cutLbPerGal: 3, solvent: ethanol95 },
    cuts: [
      { toCutLbPerGal: 1, resultMl: 1000 },
      { toCutLbPerGal: 1.5, resultMl: 800 },
    ],
    with: ethanol95,
  };
  interface Series {
    readonly cuts: readonly {
      readonly addMl: number;
      readonly stockMl: number;
      readonly resultMl: number;
      readonly cutStandardUncertainty: number;
      readonly simpleRatioWouldGive: { readonly addMl: number; readonly cutLbPerGal: number };
    }[];
    readonly suffices: boolean;
    readonly stockNeededMl: number;
    readonly stockLeftMl: number;
  }
  const series = (input: unknown) => run("working-cuts", input) as unknown as Series;

  // Trade rule: 1.54 parts to one of 3 lb for 1 lb, 0.77 for 1½ lb.
  test("3 lb to 1 lb and 1½ lb, beside what the simple ratio gives", () => {
    const [one, half] = series(plan).cuts;
    expect((one?.addMl ?? 0) / (one?.stockMl ?? 1)).toBeCloseTo(1.54, 2);
    expect((half?.addMl ?? 0) / (half?.stockMl ?? 1)).toBeCloseTo(0.77, 2);
    expect(one?.simpleRatioWouldGive.cutLbPerGal).toBeCloseTo(0.834, 3); // everyday advice: 2 parts, and it gives 0.83
    expect(half?.simpleRatioWouldGive.cutLbPerGal).toBeCloseTo(1.3, 1); // "50/50 is 1½": it is 1.30
    expect(one?.cutStandardUncertainty).toBeGreaterThan(0);
  });

  test("says whether the stock suffices, and what is left or missing", () => {
    const enough = series(plan);
    expect(enough.suffices).toBe(true);
    expect(enough.stockNeededMl + enough.stockLeftMl).toBeCloseTo(1000, 6);
    const short = series({ ...plan, stock: { ...plan.stock, solutionMl: 700 } });
    expect(short.suffices).toBe(false);
    expect(short.stockLeftMl).toBeCloseTo(700 - enough.stockNeededMl, 6);
  });
});

test("two jars blended, beside the mean by volume of solution", () => {
  const jars = [
    { solutionMl: 500, cutLbPerGal: 4, solvent: ethanol95 },
    { solutionMl: 500, cutLbPerGal: 0.5, solvent: ethanol95 },
  ];
  const blend = run("blend-jars", { jars });
  expect(blend.simpleRatioWouldGive).toEqual({ cutLbPerGal: expect.closeTo(2.25, 9) });
  expect(blend.cutLbPerGal).toBeLessThan(2.25); // the strong half litre holds less solvent
});

test("a restored jar is as sure as its weighings", () => {
  const input = { jar: { solutionG: 500, cutLbPerGal: 2, solvent: ethanol95 }, lostG: 38.6 };
  const fine = run("restore", { ...input, instruments: { scaleG: 0.1 } });
  const coarse = run("restore", { ...input, instruments: { scaleG: 1 } });
  const u = (of: Record<string, unknown>, part: "now" | "restored") =>
    (of[part] as { cutStandardUncertainty: number }).cutStandardUncertainty;
  // now: 2.222 lb in 347.4 g of alcohol; two weighings of 1 g move it by √2/347.4 of itself, and one of the jar
  expect(u(coarse, "now")).toBeCloseTo((2.222 * Math.SQRT2) / 347.4, 3);
  expect(u(coarse, "now") / u(fine, "now")).toBeCloseTo(10, 1);
  expect(u(coarse, "restored")).toBeGreaterThan(0);
});
