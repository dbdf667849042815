import type { z } from "zod";
import { DomainError } from "../domain-error.ts";
import { calculate } from "../registry/calculation.ts";
import { piecePlan } from "../registry/pieces.ts";
import { typed } from "./pen.ts";
import type { Shop } from "./shop.ts";

type PlanInput = z.input<typeof piecePlan.input>;
type Plan = z.output<typeof piecePlan.output>;

function planned(input: PlanInput): Plan {
  const plan = calculate(piecePlan, input);
  if (!plan.ok)
    throw new DomainError({ code: "contradiction", field: plan.error.field, value: plan.error.value });
  return plan.value as Plan; // what this calculation gives
}

/** The plan as a schedule is written down: the steps, and what they were worked out from. */
const scheduled = (trial: string, input: PlanInput, plan: Plan) => ({
  fromTrial: trial,
  recipe: {
    alcohol: "Ethanol 96 %",
    resin: "Dewaxed lemon flakes",
    cutLbPerGal: input.cutLbPerGal,
    coats: input.coats,
    method: input.method,
  },
  steps: plan.steps.map((step, i) => ({
    step: String(i + 1),
    what: step.what as "coat", // the plan's works are steps of a schedule
    ...(step.at === null ? {} : { day: step.at.slice(0, 10) }),
    ...(step.at === null || step.at.length === 10 ? {} : { at: step.at.slice(11) }),
    ...(step.what === "coat"
      ? { method: input.method, cutLbPerGal: input.cutLbPerGal, millilitres: step.solutionMl }
      : {}),
    minutes: step.minutes,
    leastWaitMinutes: step.leastWaitMinutes,
  })),
  millilitresPerM2PerCoat: plan.millilitresPerM2PerCoat,
  spareShare: input.spareShare ?? 0,
  workedOutFrom: input,
});

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
  const input: PlanInput = {
    areaM2: 8.8,
    cutLbPerGal: 1.5,
    solvent: { alcohol: "ethanol", volumeFraction: 0.96 },
    method: "pad",
    coats: 4,
    spareShare: 0.3,
    windows: windows as [string, string][],
  };
  pen.write(clock.at(-1, "18:05"), "piece-scheduled", scheduled(trial, input, planned(input)), {
    about: [piece, trial],
  });
  pen.write(clock.at(-1, "18:10"), "piece-described", {
    name: "Card catalogue, 24 drawer fronts",
    area: typed("0.9 m²", "area"),
    wood: "birch",
  });
}
