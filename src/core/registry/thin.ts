import { z } from "zod";
import { densityOfSolvent } from "../solution/density.ts";
import { type Poured, solventAsPoured, uncertaintyOfPouring } from "../solution/pour-uncertainty.ts";
import {
  cutOfSolution,
  massFractionOfResin,
  massOfSolution,
  volumeFractionOfResin,
  volumeOfSolution,
} from "../solution/solution.ts";
import { simpleRatio, thinTo } from "../solution/thin.ts";
import {
  cutFromPoundsPerUsGallon,
  gramsFromKilogram,
  type Kelvin,
  type Kilogram,
  millilitresFromCubicMetre,
  poundsPerUsGallonFromCut,
} from "../units.ts";
import { amountMl, cutLbPerGal } from "./amount.ts";
import { defineCalculation } from "./calculation.ts";
import { flag, flagsAbout } from "./flag.ts";
import { jar, jarAsPoured, jarFromInput } from "./jar-input.ts";
import { instrumentsFromInput, solventFromInput, temperatureFromInput } from "./solution-input.ts";
import { instruments, solvent } from "./solvent.ts";
import { sureness, surenessOf } from "./sureness.ts";

const input = z.strictObject({
  stock: jar,
  toCutLbPerGal: cutLbPerGal,
  with: solvent,
  vesselMl: amountMl.optional(),
  temperatureC: z.number().optional(),
  instruments: instruments.optional(),
});
type ThinInput = z.output<typeof input>;

const output = z.object({
  addMl: z.number(),
  addG: z.number(),
  resultMl: z.number(),
  resultG: z.number(),
  cutLbPerGal: z.number(),
  massFractionResin: z.number(),
  volumeFractionResin: z.number(),
  waterMassFraction: z.number(),
  /** Volumes of solvent to one of stock. */
  partsPerPart: z.number(),
  simpleRatioWouldGive: z.object({ addMl: z.number(), cutLbPerGal: z.number() }),
  fitsVessel: z.boolean().nullable(),
  ...sureness,
  flags: z.array(flag),
});

/** The stock and the solvent as they are poured. */
function poured(
  given: ThinInput,
  added: Kilogram,
  temperature: Kelvin,
  by: "jug" | "scale",
): readonly Poured[] {
  const composition = solventFromInput(given.with, "with");
  const volume = added / densityOfSolvent(composition, temperature).value;
  return [jarAsPoured(given.stock, "stock"), solventAsPoured(composition, by === "jug" ? volume : added, by)];
}

export const thin = defineCalculation({
  name: "thin",
  purpose: "Solvent to add to a stock for a weaker cut, and what the simple ratio would have given",
  input,
  output,
  run: (given) => {
    const temperature = temperatureFromInput(given.temperatureC);
    const stock = jarFromInput(given.stock, "stock", temperature);
    const added = solventFromInput(given.with, "with");
    const target = cutFromPoundsPerUsGallon(given.toCutLbPerGal, "toCutLbPerGal");
    const thinned = thinTo(stock, target, added);
    const { result } = thinned;
    const resultMl = millilitresFromCubicMetre(volumeOfSolution(result, temperature));
    const addMl = (thinned.added / densityOfSolvent(added, temperature).value) * 1e6;
    const simple = simpleRatio(stock, target, added, temperature);
    const { instruments: told, assumed } = instrumentsFromInput(given.instruments);
    const by = told.jugMl > 0 ? "jug" : "scale";
    const found = uncertaintyOfPouring(poured(given, thinned.added, temperature, by), temperature, told);
    return {
      addMl,
      addG: gramsFromKilogram(thinned.added),
      resultMl,
      resultG: gramsFromKilogram(massOfSolution(result)),
      cutLbPerGal: poundsPerUsGallonFromCut(cutOfSolution(result)),
      massFractionResin: massFractionOfResin(result),
      volumeFractionResin: volumeFractionOfResin(result, temperature),
      waterMassFraction: result.liquid.composition.water ?? 0,
      partsPerPart: addMl / millilitresFromCubicMetre(volumeOfSolution(stock, temperature)),
      simpleRatioWouldGive: {
        addMl: millilitresFromCubicMetre(simple.addedVolume),
        cutLbPerGal: poundsPerUsGallonFromCut(simple.cut),
      },
      fitsVessel: given.vesselMl === undefined ? null : resultMl <= given.vesselMl,
      ...surenessOf(found, assumed),
      flags: flagsAbout(densityOfSolvent(result.liquid.composition, temperature).flags, "with"),
    };
  },
  sources: [
    "Conservation of mass; dissolved resin 1205 kg/m³ (production formula of a government handbook of the trade)",
    "OIML R 22 (1975) for ethanol with water",
    "JCGM 100:2008 (GUM), 5.1",
  ],
  example: {
    input: {
      stock: { solutionMl: 1000, cutLbPerGal: 3, solvent: { alcohol: "ethanol", volumeFraction: 0.95 } },
      toCutLbPerGal: 1,
      with: { alcohol: "ethanol", volumeFraction: 0.95 },
    },
    output: {
      addMl: 1540.4,
      addG: 1249.9,
      resultMl: 2540.4,
      simpleRatioWouldGive: { addMl: 2000, cutLbPerGal: 0.8341 },
    },
  },
});
