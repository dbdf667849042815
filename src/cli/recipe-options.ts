import { finishingSchedules, scheduleSteps } from "../core/pieces/finishing-schedules.ts";
import { coatsIn, mainCoat } from "../core/pieces/main-coat.ts";
import { pieceMethods } from "../core/pieces/method-defaults.ts";
import { poundsPerUsGallon } from "../core/registry/cut-names.ts";
import { needed, plainNumber } from "./air-options.ts";
import { refused } from "./cli-error.ts";
import type { OptionSpecs } from "./command.ts";
import { optionRefused } from "./factor-options.ts";
import { given, type ShopOptions } from "./shop-options.ts";

/** So many coats of one cut, or one of the common schedules. */
export const recipeOptions = {
  method: { type: "string", value: "brush", description: `how it goes on: ${pieceMethods.join(", ")}` },
  coats: { type: "string", value: "4", description: "how many" },
  cut: { type: "string", value: "2lb", description: "of every coat" },
  use: {
    type: "string",
    value: "114",
    description: "liquid a coat, ml to a square metre; common practice unless told",
  },
  schedule: {
    type: "string",
    value: "NAME",
    description: `a common schedule in place of these four: ${finishingSchedules.join(", ")}`,
  },
} as const satisfies OptionSpecs;

const ofRecipes = ["method", "coats", "cut", "use"] as const;

function scheduleTyped(typed: ShopOptions, asked: string): Record<string, unknown> {
  const name = finishingSchedules.find((known) => known === asked);
  if (name === undefined) throw optionRefused("schedule", asked, finishingSchedules.join(" or "));
  const twice = ofRecipes.find((option) => typed.text(option) !== undefined);
  if (twice !== undefined)
    throw refused({
      code: "contradiction",
      field: `--${twice}`,
      message: `--${twice} does not go with --schedule, whose steps each have their own. One of the two would do.`,
      value: typed.text(twice) ?? null,
      limits: null,
    });
  const steps = [...scheduleSteps[name]];
  const { method, cutLbPerGal } = mainCoat(steps) ?? {};
  return { steps, coats: coatsIn(steps), method, cutLbPerGal };
}

/** What is put on the piece, as the calculation takes it. */
export function recipeTyped(typed: ShopOptions): Record<string, unknown> {
  const schedule = typed.text("schedule");
  if (schedule !== undefined) return scheduleTyped(typed, schedule);
  return {
    method: needed(typed.text("method"), "method", "brush"),
    coats: needed(plainNumber(typed, "coats", "4"), "coats", "4"),
    cutLbPerGal: poundsPerUsGallon(needed(typed.cut("cut"), "cut", "2lb")),
    ...given({ millilitresPerM2PerCoat: plainNumber(typed, "use", "114") }),
  };
}
