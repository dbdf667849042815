import { z } from "zod";
import { densityOfSolvent } from "../solution/density.ts";
import { usualPartialDensity } from "../solution/resin.ts";
import {
  cutOfSolution,
  massFractionOfResin,
  massOfSolution,
  type Solution,
  volumeFractionOfResin,
  volumeOfSolution,
} from "../solution/solution.ts";
import { simpleRatio, type Thinned, thinTo } from "../solution/thin.ts";
import { uncertaintyOfThinning } from "../solution/thin-uncertainty.ts";
import {
  cutFromPoundsPerUsGallon,
  gramsFromKilogram,
  type Kelvin,
  kilogramPerCubicMetre,
  millilitresFromCubicMetre,
  poundsPerUsGallonFromCut,
} from "../units.ts";
import { amountMl, contributions, cutLbPerGal } from "./amount.ts";
import { defineCalculation } from "./calculation.ts";
import { poundsPerUsGallon } from "./cut-names.ts";
import { flag, flagsAbout } from "./flag.ts";
import { jar, jarCut, jarFromInput } from "./jar-input.ts";
import { instrumentsFromInput, solventFromInput, temperatureFromInput } from "./solution-input.ts";
import { instruments, solvent } from "./solvent.ts";

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
  cutStandardUncertainty: z.number(),
  contributions,
  instrumentsAssumed: z.boolean(),
  flags: z.array(flag),
});

function sureness(given: ThinInput, stock: Solution, thinned: Thinned, temperature: Kelvin) {
  const { instruments: told, assumed } = instrumentsFromInput(given.instruments);
  const stockBy = given.stock.solutionG === undefined ? "jug" : "scale";
  const found = uncertaintyOfThinning(
    {
      stockCut: jarCut(given.stock, "stock"),
      stockCutUncertainty: cutFromPoundsPerUsGallon(given.stock.cutStandardUncertainty ?? 0),
      stockSolvent: stock.liquid.composition,
      partialDensity: kilogramPerCubicMetre(given.stock.partialDensityKgM3 ?? usualPartialDensity),
      stock: stockBy === "jug" ? volumeOfSolution(stock, temperature) : massOfSolution(stock),
      stockBy,
      added: thinned.added,
      addedBy: told.jugMl > 0 ? "jug" : "scale",
      addedSolvent: solventFromInput(given.with, "with"),
      temperature,
    },
    told,
  );
  return {
    cutStandardUncertainty: poundsPerUsGallon(found.standardUncertainty),
    contributions: [...found.contributions],
    instrumentsAssumed: assumed,
  };
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
      ...sureness(given, stock, thinned, temperature),
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
