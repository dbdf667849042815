import { z } from "zod";
import { combinedCut } from "../solution/combine.ts";
import { uncertaintyOfDryDown } from "../solution/cut-uncertainty.ts";
import { densityOfSolvent } from "../solution/density.ts";
import { cutFromDryDown } from "../solution/dry-down.ts";
import { strengthAt20C } from "../solution/strength.ts";
import { type Cut, cutFromPoundsPerUsGallon, kilogramFromGrams, poundsPerUsGallonFromCut } from "../units.ts";
import { amountG, cutLbPerGal } from "./amount.ts";
import { defineCalculation } from "./calculation.ts";
import { allCutNames, cutInAllNames, poundsPerUsGallon } from "./cut-names.ts";
import { flag, flagsAbout } from "./flag.ts";
import { instrumentsFromInput, solventFromInput } from "./solution-input.ts";
import { instruments, solvent } from "./solvent.ts";
import { sureness, surenessOf } from "./sureness.ts";

const computed = z.strictObject({ cutLbPerGal, cutStandardUncertainty: z.number().min(1e-6) });

const combined = z.object({
  cutLbPerGal: z.number(),
  cutStandardUncertainty: z.number(),
  disagree: z.boolean(),
  standardUncertaintiesApart: z.number(),
});

/** The computed cut and the measured one, weighted by how sure each is. */
function together(known: z.output<typeof computed>, cut: Cut, standardUncertainty: number) {
  const both = combinedCut(
    {
      cut: cutFromPoundsPerUsGallon(known.cutLbPerGal),
      standardUncertainty: cutFromPoundsPerUsGallon(known.cutStandardUncertainty),
    },
    { cut, standardUncertainty },
  );
  return {
    cutLbPerGal: poundsPerUsGallonFromCut(both.cut),
    cutStandardUncertainty: poundsPerUsGallon(both.standardUncertainty),
    disagree: both.disagree,
    standardUncertaintiesApart: both.apart,
  };
}

export const dryDown = defineCalculation({
  name: "dry-down",
  purpose: "The true cut from a spoonful weighed wet and weighed again dry",
  input: z.strictObject({
    wetG: amountG,
    dryG: amountG,
    solvent,
    instruments: instruments.optional(),
    /** What the mixing said, to combine with. */
    computed: computed.optional(),
  }),
  output: z.object({
    massFractionResin: z.number(),
    ...allCutNames,
    ...sureness,
    combined: combined.nullable(),
    flags: z.array(flag),
  }),
  run: (given) => {
    const composition = solventFromInput(given.solvent);
    const [wet, dry] = [kilogramFromGrams(given.wetG), kilogramFromGrams(given.dryG)];
    const { resin, cut } = cutFromDryDown(wet, dry, composition);
    const { instruments: told, assumed } = instrumentsFromInput(given.instruments);
    const found = uncertaintyOfDryDown(wet, dry, composition, told);
    return {
      massFractionResin: resin,
      ...cutInAllNames(cut),
      ...surenessOf(found, assumed),
      combined:
        given.computed === undefined ? null : together(given.computed, cut, found.standardUncertainty),
      flags: flagsAbout(densityOfSolvent(composition, strengthAt20C).flags, "solvent"),
    };
  },
  sources: ["Conservation of mass", "OIML R 22 (1975) for ethanol with water", "JCGM 100:2008 (GUM), 5.1"],
  example: {
    input: {
      wetG: 10,
      dryG: 2,
      solvent: { alcohol: "ethanol", volumeFraction: 0.95 },
      instruments: { scaleG: 0.01 },
    },
    output: { massFractionResin: 0.2, cutLbPerGal: 1.6928 },
  },
});
