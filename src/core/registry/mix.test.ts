import { describe, expect, test } from "vitest";
import { refusal, run } from "../../../test/run-calculation.ts";

const ethanol95 = { alcohol: "ethanol", volumeFraction: 0.95 };

describe("mix", () => {
  test("a jar's size and a cut say what to measure out, with room to shake", () => {
    const got = run("mix", { vesselMl: 500, cutLbPerGal: 2, solvent: ethanol95 });
    expect(got.solutionMl).toBeCloseTo(450, 6);
    expect(got.vessel).toEqual({ solutionFraction: expect.closeTo(0.9, 9), fits: true, mostSolutionMl: 450 });
    const full = run("mix", { vesselMl: 300, resinG: 57, cutLbPerGal: 2, solvent: ethanol95 });
    expect(full.vessel).toMatchObject({ fits: false });
  });

  test("the cut goes by three names (1 lb per imperial gallon is 0.833 US: arithmetic)", () => {
    const pounds = (cut: object): number =>
      run("mix", { resinG: 100, solvent: ethanol95, ...cut }).cutLbPerGal as number;
    expect(pounds({ cutLbPerImperialGal: 1 })).toBeCloseTo(0.8327, 4);
    expect(pounds({ gramsPerLitreSolvent: 119.826427 })).toBeCloseTo(1, 6);
  });

  test("two bottles and two resins are measured out one by one, and sum", () => {
    const got = run("mix", {
      resinG: 100,
      cutLbPerGal: 2,
      solvent: {
        parts: [
          { ...ethanol95, volumeShare: 0.9 },
          { alcohol: "n-propanol", volumeShare: 0.1 },
        ],
      },
      resins: [{ massShare: 0.25, waxMassFraction: 0.05 }, { massShare: 0.75 }],
    });
    const pours = got.pours as { massG: number; volumeMl: number }[];
    expect(pours.reduce((sum, p) => sum + p.massG, 0)).toBeCloseTo(got.solventG as number, 9);
    expect((pours[1]?.volumeMl ?? 0) / pours.reduce((sum, p) => sum + p.volumeMl, 0)).toBeCloseTo(0.1, 9);
    expect(got.weighings).toEqual([{ massG: 25 }, { massG: 75 }]);
    expect(got.flags).toMatchObject([{ code: "ideal-volumes", field: "solvent" }]);
  });

  test("the uncertainty names the largest contribution; nothing told is a kitchen's instruments", () => {
    const told = run("mix", {
      resinG: 57,
      cutLbPerGal: 2,
      solvent: ethanol95,
      instruments: { scaleG: 0.1, jugMl: 10 },
    });
    expect(told.contributions).toMatchObject([{ source: "jugMl" }, { source: "scaleG" }]);
    expect(told.instrumentsAssumed).toBe(false);
    expect(told.cutStandardUncertaintyIfWeighed as number).toBeLessThan(
      told.cutStandardUncertainty as number,
    );
    const untold = run("mix", { resinG: 57, cutLbPerGal: 2, solvent: ethanol95 });
    expect(untold.instrumentsAssumed).toBe(true);
    expect(untold.cutStandardUncertainty as number).toBeGreaterThan(0);
  });
});

describe("thinning, blending, restoring", () => {
  const stock = { solutionMl: 1000, cutLbPerGal: 3, solvent: ethanol95 };

  test("one plan for several working cuts says whether the stock suffices", () => {
    const plan = run("working-cuts", {
      stock,
      with: ethanol95,
      cuts: [{ toCutLbPerGal: 1, resultMl: 2540.4 }],
    });
    expect(plan.suffices).toBe(true);
    expect(plan.stockLeftMl as number).toBeCloseTo(0, 0);
    expect(plan.addMl as number).toBeCloseTo(1540.4, 1);
    const more = run("working-cuts", {
      stock,
      with: ethanol95,
      cuts: [{ toCutLbPerGal: 1, resultMl: 3000 }],
    });
    expect(more.suffices).toBe(false);
    expect(more.stockLeftMl as number).toBeLessThan(0);
  });

  test("a jar's own uncertainty is carried into what it is thinned to", () => {
    const exact = { scaleG: 0, jugMl: 0, temperatureC: 0, strengthVolumeFraction: 0, partialDensityKgM3: 0 };
    const unsure = { ...stock, cutStandardUncertainty: 0.3 };
    const got = run("thin", { stock: unsure, toCutLbPerGal: 1, with: ethanol95, instruments: exact });
    expect(got.contributions).toMatchObject([{ source: "jarCut" }, {}]);
    expect(got.cutStandardUncertainty as number).toBeGreaterThan(0.05);
  });

  test("a 2 lb jar that lost a tenth of its solvent is 2.22 lb, a fifth 2.5 (arithmetic)", () => {
    const jar = { solutionG: 500, cutLbPerGal: 2, solvent: ethanol95 };
    const liquid = 500 * (1 - 0.22802);
    const now = (share: number) =>
      run("restore", { jar, lostG: share * liquid }).now as { cutLbPerGal: number };
    expect(now(0.1).cutLbPerGal).toBeCloseTo(2.222, 3);
    expect(now(0.2).cutLbPerGal).toBeCloseTo(2.5, 3);
  });

  test("a dry-down is combined with what the mixing said, and says when the two disagree", () => {
    const dried = { wetG: 10, dryG: 2, solvent: ethanol95, instruments: { scaleG: 0.01 } };
    const near = run("dry-down", { ...dried, computed: { cutLbPerGal: 1.7, cutStandardUncertainty: 0.05 } });
    expect(near.combined).toMatchObject({ disagree: false });
    const far = run("dry-down", { ...dried, computed: { cutLbPerGal: 2, cutStandardUncertainty: 0.05 } });
    expect(far.combined).toMatchObject({ disagree: true });
  });

  test("water for a strength: 95 to 70 % at 60 °F takes 39.1 volumes to 100 (a printed dilution table)", () => {
    const at60F = { atTemperatureC: (60 - 32) / 1.8 };
    const got = run("alcohol-blend", {
      parts: [{ ...ethanol95, ...at60F, volumeMl: 100 }, { alcohol: "water" }],
      to: { volumeFraction: 0.7, ...at60F },
      temperatureC: at60F.atTemperatureC,
    });
    const water = (got.parts as { volumeMl: number }[])[1]?.volumeMl ?? 0;
    expect(Math.abs(water - 39.1)).toBeLessThanOrEqual(0.15);
  });
});

describe("drawn as well as propagated", () => {
  const given = {
    resinG: 57,
    cutLbPerGal: 2,
    solvent: ethanol95,
    resins: [{ moistureMassFraction: 0.02 }],
    temperatureC: 23,
  };
  const drawn = (input: unknown) => {
    const found = run("mix", input);
    return { u: found.cutStandardUncertainty as number, ...(found.drawn as object) } as {
      readonly u: number;
      readonly cutLbPerGal: number;
      readonly cutStandardUncertainty: number;
      readonly interval95: readonly [number, number];
    };
  };
  const monteCarlo = { draws: 40_000, seed: "draws" };

  // JCGM 101, clause 8: the two agree where the model is near a straight line.
  test.each([
    ["resin and solvent", given],
    ["filled up to a volume", { ...given, cutLbPerGal: undefined, solutionMl: 285 }],
    [
      "alcohol filled up with resin",
      { ...given, resinG: undefined, cutLbPerGal: undefined, solventMl: 240, solutionMl: 290 },
    ],
    [
      "two alcohols",
      {
        ...given,
        solvent: {
          parts: [
            { ...ethanol95, massShare: 0.8 },
            { alcohol: "mek", massShare: 0.2 },
          ],
        },
      },
    ],
  ])("%s: the draws have the propagated uncertainty within 3 %", (_, input) => {
    const found = drawn({ ...JSON.parse(JSON.stringify(input)), monteCarlo });
    expect(Math.abs(found.cutStandardUncertainty / found.u - 1)).toBeLessThan(0.03);
    const [low, high] = found.interval95;
    expect((high - low) / (2 * 1.96 * found.u)).toBeCloseTo(1, 1);
  });

  test("one seed gives one answer, and none is given where none was asked for", () => {
    expect(drawn({ ...given, monteCarlo })).toEqual(drawn({ ...given, monteCarlo }));
    expect(run("mix", given).drawn).toBeNull();
    expect(refusal("mix", { ...given, monteCarlo: { draws: 10, seed: "a" } }).field).toBe("monteCarlo.draws");
  });
});
