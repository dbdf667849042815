import type { z } from "zod";
import type { PartsBy } from "../core/quantity/parse-parts.ts";
import type { QuantityProblem } from "../core/quantity/parse-quantity.ts";
import { quantityProblemSentence } from "../core/quantity/problem-sentence.ts";
import type { Reading } from "../core/quantity/reading.ts";
import { poundsPerUsGallon } from "../core/registry/cut-names.ts";
import { mix } from "../core/registry/mix.ts";
import { resinsFromInput, solventFromInput, temperatureFromInput } from "../core/registry/solution-input.ts";
import { cutsOfParts, type PartsRead } from "../core/solution/cut-of-parts.ts";
import type { MixGiven, Recipe } from "../core/solution/mix.ts";
import { amountAsRead, mixesAsRead, type ReadAmount } from "../core/solution/mix-as-read.ts";
import { type Cut, cut, poundsPerUsGallonFromCut } from "../core/units.ts";
import type { Field, ShopOptions } from "./shop-options.ts";

const fields = {
  resin: { dimensions: ["mass"], flakes: true },
  cut: { dimensions: ["cut"], bareUnit: "lb-cut" },
  solvent: { dimensions: ["volume", "mass"] },
  solution: { dimensions: ["volume"] },
} as const satisfies Record<ReadAmount | "cut", Field>;

const pounds = (x: Cut): string => poundsPerUsGallonFromCut(x).toFixed(2);

type Liquids = Pick<z.output<typeof mix.input>, "solvent" | "resins" | "temperatureC">;

/** The recipe that the options tell; undefined when the calculation itself will refuse them, and say why. */
function recipeOf(input: Readonly<Record<string, unknown>>): Recipe | undefined {
  const read = mix.input.pick({ solvent: true, resins: true, temperatureC: true }).safeParse(input);
  if (!read.success) return undefined;
  const told: Liquids = read.data;
  return {
    solvent: solventFromInput(told.solvent),
    resin: resinsFromInput(told.resins),
    temperature: temperatureFromInput(told.temperatureC),
  };
}

const partsWords: Readonly<Record<PartsBy, string>> = {
  weight: "by weight",
  "weight-to-volume": "by weight to volume, grams to millilitres",
  volume: "by volume, flakes by the cup",
};

function partsInWords({ by, cut, standardUncertainty }: PartsRead): string {
  const unsure =
    standardUncertainty === 0 ? "" : `, give or take ${poundsPerUsGallon(standardUncertainty).toFixed(2)}`;
  return `${partsWords[by]} (${pounds(cut)} lb cut${unsure})`;
}

function cutOfPartsTyped(typed: ShopOptions, problem: QuantityProblem, recipe: Recipe): number {
  const ways = problem.parts === undefined ? [] : cutsOfParts(problem.parts, recipe.resin, recipe.solvent);
  const [only] = ways;
  if (only === undefined) throw typed.refusal("cut", problem);
  if (ways.length > 1) {
    const all = ways.map(partsInWords);
    const which = `“${problem.typed}” can be ${all.slice(0, -1).join("; ")}; or ${all.at(-1)}: which?`;
    throw typed.refusal("cut", problem, `${which} “${problem.typed} by weight” would do.`);
  }
  if (only.standardUncertainty > 0) typed.notes.push(`${problem.typed}: ${partsInWords(only)}.`);
  return only.cut;
}

/** The other amount that was told, the cut before all. */
function otherTold(typed: ShopOptions, of: ReadAmount, recipe: Recipe): MixGiven | undefined {
  for (const option of ["cut", "resin", "solvent", "solution"] as const) {
    const read = option === of ? undefined : typed.read(option, fields[option]);
    if (read?.ok !== true) continue;
    return option === "cut" ? { cut: cut(read.value.si) } : amountAsRead(recipe, option, read.value);
  }
  return undefined;
}

/** What taking the one for the other makes of the cut. Flakes are reckoned in ounces and then measured by the cup. */
function slipInWords(typed: ShopOptions, of: ReadAmount, readings: readonly Reading[], recipe: Recipe) {
  const given = otherTold(typed, of, recipe);
  const asRead = given === undefined ? [] : mixesAsRead(recipe, given, of, readings);
  const [meant, measured] = of === "resin" ? ["second", "first"] : ["first", "second"];
  const plan = asRead[of === "resin" ? 1 : 0];
  if (plan === undefined || pounds(plan.mixed.cut) === pounds(plan.cutIfOther)) return undefined;
  return `Reckoned as the ${meant} and measured as the ${measured}, it would be a ${pounds(plan.cutIfOther)} lb cut, not ${pounds(plan.mixed.cut)}.`;
}

/** An amount as it is read. What can be two things is refused, what was taken for granted is noted: each with the cuts. */
function amountTyped(typed: ShopOptions, of: ReadAmount, recipe: Recipe | undefined) {
  const read = typed.read(of, fields[of]);
  if (recipe !== undefined && read?.ok === false) {
    const slip = slipInWords(typed, of, read.error.readings ?? [], recipe);
    if (slip !== undefined)
      throw typed.refusal(of, read.error, `${quantityProblemSentence(read.error)} ${slip}`);
  }
  const found = typed.quantity(of, fields[of]);
  if (recipe !== undefined && found?.instead !== undefined) {
    const slip = slipInWords(typed, of, [found, found.instead], recipe);
    if (slip !== undefined) typed.notes.push(slip);
  }
  return found;
}

/**
 * The amounts of a mix from what was typed, as the calculation takes them. Ounces of weight or volume, a pint of either
 * gallon, flakes by the cup and parts are shown both ways, with the difference in cut.
 */
export function amountsTyped(typed: ShopOptions, liquids: Readonly<Record<string, unknown>>) {
  const recipe = recipeOf(liquids);
  const parts = typed.read("cut", fields.cut);
  const inParts = recipe !== undefined && parts?.ok === false && parts.error.code === "parts";
  const cutTold = inParts ? cutOfPartsTyped(typed, parts.error, recipe) : typed.number("cut", fields.cut);
  const resin = amountTyped(typed, "resin", recipe);
  const solvent = amountTyped(typed, "solvent", recipe);
  const solution = amountTyped(typed, "solution", recipe);
  return {
    ...(cutTold === undefined ? {} : { gramsPerLitreSolvent: cutTold }),
    ...(resin === undefined ? {} : { resinG: resin.si * 1e3 }),
    ...(solvent === undefined
      ? {}
      : solvent.dimension === "mass"
        ? { solventG: solvent.si * 1e3 }
        : { solventMl: solvent.si * 1e6 }),
    ...(solution === undefined ? {} : { solutionMl: solution.si * 1e6 }),
  };
}
