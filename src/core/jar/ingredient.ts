import type { Body } from "../notebook/kinds/all.ts";
import type { NotebookReader } from "../notebook/reader.ts";
import type { Composition } from "../solution/composition.ts";
import { densityOfSolvent } from "../solution/density.ts";
import { kitchenInstruments } from "../solution/instruments.ts";
import { celsius, kelvinFromCelsius, kilogram, massFraction } from "../units.ts";
import { type Amounts, amountsOfLiquid } from "./amounts.ts";
import { makeupOf, type ResinMakeup, struckMakeup } from "./makeup.ts";
import type { Reading } from "./reckoning.ts";
import { amountRead } from "./typed-amount.ts";

export type IngredientBody = Body<"batch-mixed">["resins"][number];

/** Something off the shelf, by its name there, or only named. */
export interface Named {
  readonly material: string | null;
  readonly name: string;
}

/** One thing put into a jar: what was read, and what it comes to when the readings are these. */
export interface Ingredient {
  readonly named: Named;
  readonly readings: readonly Reading[];
  readonly amounts: (figures: readonly number[]) => Amounts;
  readonly resin: ResinMakeup | null;
}

export type IngredientProblem = "not-an-amount" | "flakes-by-volume" | "strength-unreadable";

const nameOf = (read: NotebookReader, body: IngredientBody): Named => ({
  material: body.material ?? null,
  name:
    (body.material === undefined
      ? undefined
      : (makeupOf(read, body.material) ?? struckMakeup(read, body.material))
    )?.name ??
    body.name ??
    "",
});

/** Resin as weighed: its moisture goes to the liquid. */
function resinIngredient(
  read: NotebookReader,
  body: IngredientBody,
  key: string,
): Ingredient | IngredientProblem {
  const amount = amountRead(read, body.amount, `${key}.amount`);
  if (amount === null) return "not-an-amount";
  if (amount.by === "volume") return "flakes-by-volume";
  const named = nameOf(read, body);
  const makeup = body.material === undefined ? null : (makeupOf(read, body.material)?.resin ?? null);
  const moisture: Reading = {
    key: `${body.material ?? key}.moisture`,
    source: "moistureMassFraction",
    value: makeup?.moisture ?? 0,
    standardUncertainty: kitchenInstruments.moistureMassFraction,
  };
  const wax = makeup?.wax ?? 0;
  const insoluble = makeup?.insoluble ?? 0;
  return {
    named,
    readings: [amount.reading, moisture],
    resin: makeup ?? { name: named.name, grade: named.name, wax: null, moisture: null, insoluble: null },
    amounts: ([kg = 0, damp = 0]) => ({
      resin: kg * Math.max(0, 1 - damp - wax - insoluble),
      wax: kg * wax,
      insoluble: kg * insoluble,
      water: kg * damp,
    }),
  };
}

const unnamed: Composition = { unknown: massFraction(1) };

/** Solvent by the scale or by the jug, at a shop's temperature. */
function solventIngredient(
  read: NotebookReader,
  body: IngredientBody,
  key: string,
): Ingredient | IngredientProblem {
  const amount = amountRead(read, body.amount, `${key}.amount`);
  if (amount === null) return "not-an-amount";
  const makeup = body.material === undefined ? null : makeupOf(read, body.material);
  if (makeup?.problem) return "strength-unreadable";
  const composition = makeup?.composition ?? unnamed;
  const liquid = (kg: number): Amounts => amountsOfLiquid({ mass: kilogram(kg), composition });
  const named = nameOf(read, body);
  if (amount.by === "mass")
    return { named, resin: null, readings: [amount.reading], amounts: ([kg = 0]) => liquid(kg) };
  const temperature: Reading = {
    key: `${key}.temperature`,
    source: "temperatureC",
    value: 20,
    standardUncertainty: kitchenInstruments.temperatureC,
  };
  const density = (t: number): number => densityOfSolvent(composition, kelvinFromCelsius(celsius(t))).value;
  return {
    named,
    resin: null,
    readings: [amount.reading, temperature],
    amounts: ([volume = 0, t = 20]) => liquid(volume * density(t)),
  };
}

export interface Poured {
  readonly named: readonly Named[];
  readonly resins: readonly ResinMakeup[];
  readonly readings: readonly Reading[];
  readonly amounts: (figures: readonly number[]) => Amounts[];
}

/** Several ingredients at once: their readings in one list, and what each comes to. */
export function poured(
  read: NotebookReader,
  lists: { readonly resins?: readonly IngredientBody[]; readonly solvents?: readonly IngredientBody[] },
  entry: string,
): Poured | IngredientProblem {
  const made: (Ingredient | IngredientProblem)[] = [
    ...(lists.resins ?? []).map((body, i) => resinIngredient(read, body, `${entry}.resins.${i}`)),
    ...(lists.solvents ?? []).map((body, i) => solventIngredient(read, body, `${entry}.solvents.${i}`)),
  ];
  const problem = made.find((part) => typeof part === "string");
  if (problem !== undefined) return problem;
  const parts = made as Ingredient[]; // the ones that are problems were found above
  return {
    named: parts.map((part) => part.named),
    resins: parts.flatMap((part) => part.resin ?? []),
    readings: parts.flatMap((part) => part.readings),
    amounts: (figures) => {
      let at = 0;
      return parts.map((part) => {
        const own = figures.slice(at, at + part.readings.length);
        at += part.readings.length;
        return part.amounts(own);
      });
    },
  };
}
