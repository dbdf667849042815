import { poundsPerUsGallon } from "../core/registry/cut-names.ts";
import { refused } from "./cli-error.ts";
import { defineCommand } from "./command.ts";
import { given, liquidOptions, runCalculation, ShopOptions } from "./shop-options.ts";
import {
  cutWords,
  fluidOunces,
  grams,
  millilitres,
  notesText,
  percent,
  type Sureness,
  tableText,
} from "./shop-words.ts";

interface ThinOutput extends Sureness {
  readonly addMl: number;
  readonly addG: number;
  readonly resultMl: number;
  readonly resultG: number;
  readonly partsPerPart: number;
  readonly volumeFractionResin: number;
  readonly massFractionResin: number;
  readonly fitsVessel: boolean | null;
  readonly simpleRatioWouldGive: { readonly addMl: number; readonly cutLbPerGal: number };
  readonly flags: readonly { readonly message: string }[];
}

const strengthFields = ["massFraction", "volumeFraction", "usProof"];
const optionOf: Readonly<Record<string, string>> = {
  "stock.solutionMl": "--stock",
  "stock.solutionG": "--stock",
  "stock.cutLbPerGal": "--cut",
  "stock.gramsPerLitreSolvent": "--cut",
  toCutLbPerGal: "--to",
  vesselMl: "--vessel",
  temperatureC: "--temperature",
  "stock.solvent.alcohol": "--alcohol",
  "with.alcohol": "--with-alcohol",
  ...Object.fromEntries(strengthFields.map((f) => [`stock.solvent.${f}`, "--strength"])),
  ...Object.fromEntries(strengthFields.map((f) => [`with.${f}`, "--with-strength"])),
};

function words(found: ThinOutput): string {
  const simple = found.simpleRatioWouldGive;
  return tableText([
    ["add", millilitres(found.addMl), `${grams(found.addG)}, ${fluidOunces(found.addMl)}`],
    ["makes", millilitres(found.resultMl), `${grams(found.resultG)}, ${fluidOunces(found.resultMl)}`],
    ...(found.fitsVessel === false ? [["", "does not fit the vessel"]] : []),
    ["parts", `${found.partsPerPart.toFixed(2)} of alcohol to 1 of stock`],
    ["cut", cutWords(found)],
    ["resin", `${percent(found.massFractionResin)} by mass, ${percent(found.volumeFractionResin)} by volume`],
    [
      "simple",
      `the simple ratio would add ${millilitres(simple.addMl)} and give ${simple.cutLbPerGal.toFixed(2)} lb`,
    ],
  ]);
}

function needed(typed: ShopOptions, option: string, cut: number | undefined): number {
  if (cut !== undefined) return cut;
  throw refused({
    code: "missing",
    field: `--${option}`,
    message: `--${option} is missing. For instance --${option} 2lb would do.`,
    value: typed.text(option) ?? null,
    limits: null,
  });
}

export const command = defineCommand({
  usage: "thin --stock 1l --cut 3lb --to 1lb --strength 95%",
  positionals: 0,
  options: {
    stock: { type: "string", value: "1l", description: "how much there is, by jug or by scale" },
    cut: { type: "string", value: "3lb", description: "its cut" },
    "give-or-take": { type: "string", value: "0.1lb", description: "standard uncertainty of that cut" },
    to: { type: "string", value: "1lb", description: "the cut wanted" },
    vessel: { type: "string", value: "2l", description: "the jar it has to fit" },
    "with-alcohol": {
      type: "string",
      value: "NAME",
      description: "what is added, when it is not the stock's own",
    },
    "with-strength": { type: "string", value: "99%", description: "its strength" },
    ...liquidOptions,
  },
  run({ values }, effects) {
    const typed = new ShopOptions(values);
    const solvent = typed.liquid();
    const unsure = typed.cut("give-or-take");
    if (unsure === undefined)
      typed.notes.push("The stock's own cut is taken as exact; --give-or-take says how sure it is.");
    const other = values["with-alcohol"] !== undefined || values["with-strength"] !== undefined;
    const input = {
      stock: {
        ...typed.amount("stock", { g: "solutionG", ml: "solutionMl" }),
        gramsPerLitreSolvent: needed(typed, "cut", typed.cut("cut")),
        ...given({ cutStandardUncertainty: unsure === undefined ? undefined : poundsPerUsGallon(unsure) }),
        solvent,
      },
      toCutLbPerGal: poundsPerUsGallon(needed(typed, "to", typed.cut("to"))),
      with: other ? typed.liquid("with-alcohol", "with-strength") : solvent,
      ...given({ vesselMl: typed.millilitres("vessel") }),
      ...typed.temperatureC(),
      ...typed.instruments(),
    };
    const found = runCalculation<ThinOutput>("thin", input, optionOf);
    if (values.json === true) return effects.stdout(`${JSON.stringify(found, null, 2)}\n`);
    effects.stdout(words(found) + notesText(typed.notes, found.flags, found.instrumentsAssumed));
  },
});
