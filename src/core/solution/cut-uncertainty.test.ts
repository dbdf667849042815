import { describe, expect, test } from "vitest";
import { type Random, randomFromSeed, randomNormal } from "../random.ts";
import {
  type Cut,
  celsius,
  cutFromPoundsPerUsGallon,
  kelvin,
  kelvinFromCelsius,
  kilogram,
  massFraction,
} from "../units.ts";
import { combinedCut } from "./combine.ts";
import { aqueous } from "./composition.ts";
import { uncertaintyOfDryDown, uncertaintyOfMix } from "./cut-uncertainty.ts";
import { densityOfSolvent } from "./density.ts";
import { cutFromDryDown } from "./dry-down.ts";
import { type Instruments, kitchenInstruments } from "./instruments.ts";
import { type Mixed, mixFrom, type Recipe } from "./mix.ts";
import { uncertaintyOfPouring } from "./pour-uncertainty.ts";
import { blendOfResins, plainResin, type ResinBlend, usualPartialDensity } from "./resin.ts";
import { labelledStrength } from "./strength-shift.ts";

const between = (random: Random, low: number, high: number): number => low + (high - low) * random();

interface Drawn {
  readonly recipe: Recipe;
  readonly mixed: Mixed;
  readonly instruments: Instruments;
  readonly solventBy: "jug" | "scale";
}

/** A recipe such as a shop mixes, with instruments such as it has. */
function drawnRecipe(random: Random): Drawn {
  const moisture = between(random, 0.01, 0.03);
  const recipe: Recipe = {
    resin: blendOfResins([{ ...plainResin, moisture: massFraction(moisture) }]),
    solvent: aqueous(random() < 0.7 ? "ethanol" : "isopropanol", massFraction(between(random, 0.8, 0.97))),
    temperature: kelvinFromCelsius(celsius(between(random, 10, 28))),
  };
  const mixed = mixFrom(recipe, {
    resin: kilogram(between(random, 0.03, 0.4)),
    cut: cutFromPoundsPerUsGallon(between(random, 0.5, 4)),
  });
  const instruments: Instruments = {
    scaleG: between(random, 0.05, 1),
    jugMl: between(random, 1, 8),
    temperatureC: between(random, 0.5, 3),
    strengthVolumeFraction: between(random, 0.001, 0.008),
    moistureMassFraction: between(random, 0.001, 0.004),
    partialDensityKgM3: between(random, 5, 30),
  };
  return { recipe, mixed, instruments, solventBy: random() < 0.5 ? "jug" : "scale" };
}

/** What a jar's cut truly is when every reading is a little off: written apart from the formula under test. */
function simulatedCut({ recipe, mixed, instruments, solventBy }: Drawn, random: Random): number {
  const off = (u: number): number => u * randomNormal(random);
  const resin: ResinBlend = recipe.resin;
  const dry =
    (mixed.resin + off(instruments.scaleG / 1e3)) * (resin.dry - off(instruments.moistureMassFraction));
  const solvent =
    labelledStrength(recipe.solvent)?.shifted(off(instruments.strengthVolumeFraction)) ?? recipe.solvent;
  const at20C = densityOfSolvent(solvent, kelvin(293.15));
  const wrong = off(at20C.standardUncertainty);
  if (solventBy === "scale")
    return (dry * (at20C.value + wrong)) / (mixed.solvent + off(instruments.scaleG / 1e3));
  const poured =
    mixed.solvent / densityOfSolvent(recipe.solvent, recipe.temperature).value + off(instruments.jugMl / 1e6);
  const warm = densityOfSolvent(solvent, kelvin(recipe.temperature + off(instruments.temperatureC)));
  return dry / ((poured * (warm.value + wrong)) / (at20C.value + wrong));
}

describe("how sure a mix is", () => {
  test("the 95 % interval holds the simulated cut in 93–97 % of draws (JCGM 101), for 200 seeded recipes", () => {
    const random = randomFromSeed("mixes");
    let [inside, all] = [0, 0];
    for (let i = 0; i < 200; i++) {
      const drawn = drawnRecipe(random);
      const { standardUncertainty } = uncertaintyOfMix(drawn.recipe, drawn.mixed, {
        ...drawn,
        measured: "resin-and-solvent",
      });
      for (let k = 0; k < 100; k++) {
        const off = Math.abs(simulatedCut(drawn, random) - drawn.mixed.cut);
        inside += off <= 1.96 * standardUncertainty ? 1 : 0;
        all++;
      }
    }
    expect(inside / all).toBeGreaterThan(0.93);
    expect(inside / all).toBeLessThan(0.97);
  });

  test("making the largest contribution exact helps more than any other", () => {
    const random = randomFromSeed("largest");
    for (let i = 0; i < 200; i++) {
      const drawn = drawnRecipe(random);
      const how = { measured: "resin-and-solvent", solventBy: drawn.solventBy } as const;
      const { contributions } = uncertaintyOfMix(drawn.recipe, drawn.mixed, {
        ...how,
        instruments: drawn.instruments,
      });
      const named = contributions.filter((c) => c.source !== "solventDensityKgM3");
      const without = named.map(({ source }) => {
        const instruments = { ...drawn.instruments, [source]: 0 };
        return uncertaintyOfMix(drawn.recipe, drawn.mixed, { ...how, instruments }).standardUncertainty;
      });
      expect(Math.min(...without)).toBe(without[0]);
    }
  });

  const recipe: Recipe = {
    resin: blendOfResins([plainResin]),
    solvent: aqueous("ethanol", massFraction(0.924077)),
    temperature: kelvin(293.15),
  };
  const mixed = mixFrom(recipe, { resin: kilogram(0.057), cut: cutFromPoundsPerUsGallon(2) });
  const exact: Instruments = {
    scaleG: 0,
    jugMl: 0,
    temperatureC: 0,
    strengthVolumeFraction: 0,
    moistureMassFraction: 0,
    partialDensityKgM3: 0,
  };
  const relative = (
    instruments: Partial<Instruments>,
    measured: "resin-and-solvent" | "resin-and-solution",
  ) =>
    uncertaintyOfMix(recipe, mixed, { measured, solventBy: "jug", instruments: { ...exact, ...instruments } })
      .standardUncertainty / mixed.cut;

  // By hand: c = m/V, so the relative uncertainties are those of m and V.
  test("scale and jug, by hand", () => {
    expect(relative({ scaleG: 0.57 }, "resin-and-solvent")).toBeCloseTo(0.01, 6);
    expect(relative({ jugMl: 2.3784 }, "resin-and-solvent")).toBeCloseTo(0.01, 4);
    expect(relative({ moistureMassFraction: 0.01 }, "resin-and-solvent")).toBeCloseTo(0.01, 6);
  });

  // By hand: V = Vs + m/ρ, so dVs/dρ = m/ρ², and the cut moves by (m/ρ)/Vs · dρ/ρ.
  test("filled up to a line, the resin's volume counts", () => {
    expect(relative({ partialDensityKgM3: 20 }, "resin-and-solvent")).toBeLessThan(1e-4);
    const byHand = (0.057 / 1205 / 237.84e-6) * (20 / 1205);
    expect(relative({ partialDensityKgM3: 20 }, "resin-and-solution")).toBeCloseTo(byHand, 5);
  });

  test("weighing the alcohol instead of pouring it helps, in a kitchen", () => {
    const by = (solventBy: "jug" | "scale"): number =>
      uncertaintyOfMix(recipe, mixed, {
        measured: "resin-and-solvent",
        solventBy,
        instruments: kitchenInstruments,
      }).standardUncertainty;
    expect(by("scale")).toBeLessThan(by("jug"));
  });
});

describe("how sure a thinning is", () => {
  test("against Monte Carlo, the stock by jug and the solvent weighed", () => {
    const random = randomFromSeed("thinnings");
    const off = (u: number): number => u * randomNormal(random);
    const t = kelvin(298.15);
    const solvent = aqueous("isopropanol", massFraction(0.98));
    const stock = {
      cut: cutFromPoundsPerUsGallon(3),
      cutUncertainty: 8,
      solvent,
      amount: 5e-4,
      by: "jug",
    } as const;
    const added = { cut: 0 as Cut, cutUncertainty: 0, solvent, amount: 0.5, by: "scale" } as const;
    const parts = [stock, added].map((p) => ({ ...p, partialDensity: usualPartialDensity }));
    const found = uncertaintyOfPouring(parts, t, kitchenInstruments);
    const cuts = Array.from({ length: 20_000 }, () => {
      const at20C = densityOfSolvent(solvent, kelvin(293.15)).value;
      const cut = 3 * 119.826427 + off(8);
      const volume = 5e-4 + off(5e-6);
      const partialDensity = 1205 + off(20);
      const shrunk = densityOfSolvent(solvent, kelvin(298.15 + off(2))).value / at20C;
      const liquid = volume / (1 / shrunk + cut / partialDensity); // m³ at 20 °C
      return (cut * liquid) / (liquid + (0.5 + off(5e-4)) / (at20C + off(1.2)));
    });
    const mean = cuts.reduce((a, b) => a + b, 0) / cuts.length;
    const deviation = Math.sqrt(cuts.reduce((a, b) => a + (b - mean) ** 2, 0) / (cuts.length - 1));
    const named = found.contributions.filter((c) => c.source !== "strengthVolumeFraction");
    const withoutLabel = found.standardUncertainty * Math.sqrt(named.reduce((sum, c) => sum + c.share, 0));
    expect(Math.abs(withoutLabel / deviation - 1)).toBeLessThan(0.03);
  });
});

describe("how sure a dry-down is", () => {
  test("against Monte Carlo", () => {
    const random = randomFromSeed("dry-downs");
    const solvent = aqueous("ethanol", massFraction(0.92));
    const instruments: Instruments = { ...kitchenInstruments, scaleG: 0.02, moistureMassFraction: 0.002 };
    const found = uncertaintyOfDryDown(0.012, 0.003, solvent, instruments);
    const cuts = Array.from({ length: 20_000 }, () => {
      const [wet, dry] = [0.012 + 2e-5 * randomNormal(random), 0.003 + 2e-5 * randomNormal(random)];
      const label = labelledStrength(solvent)?.shifted(0.005 * randomNormal(random)) ?? solvent;
      const held = 1 - 0.002 * randomNormal(random);
      return cutFromDryDown(kilogram(wet), kilogram(dry * held), label).cut as number;
    });
    const mean = cuts.reduce((a, b) => a + b, 0) / cuts.length;
    const deviation = Math.sqrt(cuts.reduce((a, b) => a + (b - mean) ** 2, 0) / (cuts.length - 1));
    expect(Math.abs(found.standardUncertainty / deviation - 1)).toBeLessThan(0.03);
    expect(found.contributions[0]?.source).toBe("scaleG");
  });

  test("a film weighs less than it did wet", () => {
    const solvent = aqueous("ethanol", massFraction(0.92));
    for (const [wet, dry] of [
      [0.01, 0.01],
      [0.01, 0.011],
      [0, 0],
    ] as const)
      expect(() => cutFromDryDown(kilogram(wet), kilogram(dry), solvent)).toThrowError(/out-of-range/);
  });
});

describe("a computed and a measured cut", () => {
  const cut = (x: number, u: number) => ({ cut: x as Cut, standardUncertainty: u });
  test("are weighted by how sure each is", () => {
    const both = combinedCut(cut(200, 10), cut(210, 5));
    expect(both.cut).toBeCloseTo(208, 9); // by hand: (200·1 + 210·4)/5
    expect(both.standardUncertainty).toBeCloseTo(Math.sqrt(20), 9);
    expect(both.disagree).toBe(false);
  });
  test("disagree when they differ by more than both allow", () => {
    expect(combinedCut(cut(200, 3), cut(210, 4)).disagree).toBe(false); // 10 over 5
    expect(combinedCut(cut(200, 3), cut(210.1, 4)).disagree).toBe(true);
  });
});
