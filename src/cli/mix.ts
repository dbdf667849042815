import { defineCommand } from "./command.ts";
import { amountsTyped } from "./mix-as-typed.ts";
import { given, liquidOptions, runCalculation, ShopOptions } from "./shop-options.ts";
import {
  cutWords,
  fluidOunces,
  grams,
  millilitres,
  notesText,
  ounces,
  percent,
  type Sureness,
  tableText,
} from "./shop-words.ts";

interface MixOutput extends Sureness {
  readonly resinG: number;
  readonly solventMl: number;
  readonly solventG: number;
  readonly solutionMl: number;
  readonly solutionG: number;
  readonly gramsPerLitreSolvent: number;
  readonly massFractionResin: number;
  readonly volumeFractionResin: number;
  readonly waterMassFraction: number;
  readonly vessel: { readonly fits: boolean; readonly mostSolutionMl: number } | null;
  readonly solventMeasuredBy: "jug" | "scale";
  readonly cutStandardUncertaintyIfWeighed: number;
  readonly flags: readonly { readonly message: string }[];
}

const optionOf = {
  resinG: "--resin",
  cutLbPerGal: "--cut",
  gramsPerLitreSolvent: "--cut",
  cutLbPerImperialGal: "--cut",
  solventMl: "--solvent",
  solventG: "--solvent",
  solutionMl: "--solution",
  vesselMl: "--vessel",
  headspaceFraction: "--headspace",
  "solvent.alcohol": "--alcohol",
  "solvent.massFraction": "--strength",
  "solvent.volumeFraction": "--strength",
  "solvent.usProof": "--strength",
  temperatureC: "--temperature",
  "resins[0].moistureMassFraction": "--moisture",
};

function words(found: MixOutput): string {
  const weighed = found.cutStandardUncertaintyIfWeighed;
  const better = found.solventMeasuredBy === "jug" && weighed < 0.8 * found.cutStandardUncertainty;
  const room =
    found.vessel === null || found.vessel.fits
      ? []
      : [["", `does not fit: with headspace the vessel takes ${millilitres(found.vessel.mostSolutionMl)}`]];
  return tableText([
    ["resin", grams(found.resinG), ounces(found.resinG)],
    ["alcohol", millilitres(found.solventMl), `${grams(found.solventG)}, ${fluidOunces(found.solventMl)}`],
    ["makes", millilitres(found.solutionMl), `${grams(found.solutionG)}, ${fluidOunces(found.solutionMl)}`],
    ...room,
    ["cut", cutWords(found)],
    ...(better ? [["", `with the alcohol weighed instead, ${weighed.toFixed(3)}`]] : []),
    ["", `${grams(found.gramsPerLitreSolvent)} to a litre of solvent`],
    ["resin", `${percent(found.massFractionResin)} by mass, ${percent(found.volumeFractionResin)} by volume`],
    ["water", `${percent(found.waterMassFraction)} of the liquid, by mass`],
  ]);
}

export const command = defineCommand({
  usage: "mix --resin 57g --cut 2lb --strength 95%",
  positionals: 0,
  options: {
    resin: { type: "string", value: "57g", description: "flakes, weighed" },
    cut: {
      type: "string",
      value: "2lb",
      description: "the cut wanted: lb to a gallon of solvent, g/l, or parts such as 1:4 by weight",
    },
    solvent: { type: "string", value: "350ml", description: "alcohol, poured or weighed" },
    solution: { type: "string", value: "500ml", description: "finished liquid" },
    vessel: { type: "string", value: "500ml", description: "the jar's size, brim full" },
    headspace: {
      type: "string",
      value: "10%",
      description: "share of the jar left empty; a tenth unless told",
    },
    moisture: { type: "string", value: "2%", description: "of the flakes, by mass; none unless told" },
    ...liquidOptions,
  },
  run({ values }, effects) {
    const typed = new ShopOptions(values);
    const moisture = typed.fraction("moisture");
    const liquids = {
      solvent: typed.liquid(),
      ...typed.temperatureC(),
      ...(moisture === undefined ? {} : { resins: [{ moistureMassFraction: moisture }] }),
    };
    const input = {
      ...given({
        ...amountsTyped(typed, liquids),
        vesselMl: typed.millilitres("vessel"),
        headspaceFraction: typed.fraction("headspace"),
      }),
      ...liquids,
      ...typed.instruments(),
    };
    const found = runCalculation<MixOutput>("mix", input, optionOf);
    if (values.json === true) return effects.stdout(`${JSON.stringify(found, null, 2)}\n`);
    effects.stdout(words(found) + notesText(typed.notes, found.flags, found.instrumentsAssumed));
  },
});
