import { DomainError } from "../domain-error.ts";
import { calculate } from "../registry/calculation.ts";
import { type PiecePlanInput, type PiecePlanOutput, scheduleFromPlan } from "../registry/piece-schedule.ts";
import { piecePlan } from "../registry/pieces.ts";
import { typed } from "./pen.ts";
import type { Shop } from "./shop.ts";

function planned(input: PiecePlanInput): PiecePlanOutput {
  const plan = calculate(piecePlan, input);
  if (!plan.ok)
    throw new DomainError({ code: "contradiction", field: plan.error.field, value: plan.error.value });
  return plan.value as PiecePlanOutput; // what this calculation gives
}

/** Day −1: the winner chosen, and the eight chairs laid onto the evenings to come. */
export function planChairs(shop: Shop, trial: string): void {
  const { pen, clock } = shop;
  pen.write(
    clock.at(-1, "17:45"),
    "trial-closed",
    {
      chosen: { alcohol: "ethanol", cut: "1½ lb" },
      why: "As good as the denatured, without its ketone; the stronger cut is glossier in the same four evenings.",
    },
    { about: [trial] },
  );
  const windows = Array.from({ length: 21 }, (_, i) => [
    `${clock.day(i + 1)}T18:00`,
    `${clock.day(i + 1)}T21:30`,
  ]);
  const free = windows.map(([from = "", to = ""]) => ({ from, to }));
  pen.write(clock.at(-1, "17:50"), "free-time", { windows: free });
  const piece = pen.write(clock.at(-1, "17:55"), "piece-described", {
    name: "Eight reading-room chairs",
    area: typed("8.8 m²", "area"),
    wood: "cherry seats, ash frames",
    wanted: clock.day(30),
  });
  const input: PiecePlanInput = {
    areaM2: 8.8,
    cutLbPerGal: 1.5,
    solvent: { alcohol: "ethanol", volumeFraction: 0.96 },
    method: "pad",
    coats: 4,
    spareShare: 0.3,
    windows: windows as [string, string][],
  };
  pen.write(
    clock.at(-1, "18:05"),
    "piece-scheduled",
    scheduleFromPlan(input, planned(input), {
      resin: { id: shop.shelf.lemon, name: "Dewaxed lemon flakes" },
      solvent: { id: shop.shelf.alcohol.ethanol, name: "Ethanol 96 %" },
      fromTrial: trial,
    }),
    {
      about: [piece, trial],
    },
  );
  pen.write(clock.at(-1, "18:10"), "piece-described", {
    name: "Card catalogue, 24 drawer fronts",
    area: typed("0.9 m²", "area"),
    wood: "birch",
  });
}
