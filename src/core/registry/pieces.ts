import { z } from "zod";
import { DomainError } from "../domain-error.ts";
import { benchTime, clock } from "../pieces/bench-time.ts";
import { methodDefaults, pieceMethods } from "../pieces/method-defaults.ts";
import { type Evening, type PlannedStep, pieceWorks, planPiece } from "../pieces/plan.ts";
import { densityOfSolvent } from "../solution/density.ts";
import { mixFrom } from "../solution/mix.ts";
import { volumeFractionOfResin } from "../solution/solution.ts";
import { cubicMetreFromMillilitres, cutFromPoundsPerUsGallon, gramsFromKilogram } from "../units.ts";
import { cutLbPerGal } from "./amount.ts";
import { defineCalculation } from "./calculation.ts";
import { flag, flagsAbout } from "./flag.ts";
import { resinsFromInput, solventFromInput, temperatureFromInput } from "./solution-input.ts";
import { resins, solvent } from "./solvent.ts";

const input = z.strictObject({
  areaM2: z.number(),
  method: z.enum(pieceMethods),
  coats: z.number(),
  cutLbPerGal,
  solvent,
  resins: resins.optional(),
  /** Evenings at the bench, from and until, wall-clock time. */
  windows: z.array(z.tuple([z.string(), z.string()])),
  spareShare: z.number().optional(),
  cureDays: z.number().optional(),
  /** The person's own numbers in place of the starting ones. */
  millilitresPerM2PerCoat: z.number().min(1).max(1000).optional(),
  transfer: z.number().min(0.01).max(1).optional(),
  minutesPerM2: z.number().min(0.1).max(600).optional(),
  temperatureC: z.number().optional(),
});

const step = z.object({
  what: z.enum(pieceWorks),
  coat: z.number().nullable(),
  at: z.string().nullable(),
  minutes: z.number(),
  solutionMl: z.number(),
  leastWaitMinutes: z.number(),
});

const output = z.object({
  steps: z.array(step),
  solutionUsedMl: z.number(),
  solutionToMixMl: z.number(),
  resinG: z.number(),
  solventMl: z.number(),
  solventG: z.number(),
  dryUm: z.number(),
  millilitresPerM2PerCoat: z.number(),
  eveningsUsed: z.number(),
  unplacedSteps: z.number(),
  flags: z.array(flag),
});

function eveningOf([from, until]: readonly [string, string], i: number): Evening {
  const start = benchTime(from, `windows[${i}][0]`);
  const end = benchTime(until, `windows[${i}][1]`);
  if (start.day !== end.day)
    throw new DomainError({
      code: "contradiction",
      field: `windows[${i}]`,
      value: [from, until],
      because: "An evening begins and ends on one day; write two where it runs past midnight.",
    });
  return { day: start.day, fromMinute: start.minute, untilMinute: end.minute };
}

const at = ({ day, fromMinute }: PlannedStep): string | null => {
  if (day === null) return null;
  return fromMinute === null ? day : `${day}T${clock(fromMinute)}`;
};

export const piecePlan = defineCalculation({
  name: "piece-plan",
  purpose: "A recipe laid onto a real piece: dated steps, the liquid to mix, and the film at the end",
  input,
  output,
  run: (given) => {
    const recipe = {
      resin: resinsFromInput(given.resins),
      solvent: solventFromInput(given.solvent),
      temperature: temperatureFromInput(given.temperatureC),
    };
    const cut = cutFromPoundsPerUsGallon(given.cutLbPerGal);
    const litre = mixFrom(recipe, { cut, solutionVolume: cubicMetreFromMillilitres(1000) });
    const usual = methodDefaults[given.method];
    const own = {
      litresPerM2:
        given.millilitresPerM2PerCoat === undefined
          ? usual.litresPerM2
          : given.millilitresPerM2PerCoat / 1000,
      transfer: given.transfer ?? usual.transfer,
      minutesPerM2: given.minutesPerM2 ?? usual.minutesPerM2,
    };
    const plan = planPiece({
      areaM2: given.areaM2,
      method: given.method,
      coats: given.coats,
      volumeSolids: volumeFractionOfResin(litre.solution, recipe.temperature),
      evenings: given.windows.map(eveningOf),
      own,
      ...(given.spareShare === undefined ? {} : { spareShare: given.spareShare }),
      ...(given.cureDays === undefined ? {} : { cureDays: given.cureDays }),
    });
    const litres = plan.millilitresToMix / 1000;
    const density = densityOfSolvent(recipe.solvent, recipe.temperature);
    return {
      steps: plan.steps.map((s) => ({
        what: s.what,
        coat: s.coat ?? null,
        at: at(s),
        minutes: s.minutes,
        solutionMl: s.millilitres,
        leastWaitMinutes: s.waitMinutes,
      })),
      solutionUsedMl: plan.millilitresUsed,
      solutionToMixMl: plan.millilitresToMix,
      resinG: gramsFromKilogram(litre.resin) * litres,
      solventG: gramsFromKilogram(litre.solvent) * litres,
      solventMl: (litre.solvent / density.value) * 1e6 * litres,
      dryUm: plan.dryFilm * 1e6,
      millilitresPerM2PerCoat: own.litresPerM2 * 1000,
      eveningsUsed: plan.eveningsUsed,
      unplacedSteps: plan.unplaced,
      flags: flagsAbout(density.flags, "solvent"),
    };
  },
  sources: [
    "1604 ft² a US gallon at one mil (an identity of units)",
    "Amounts, losses and waits of padding, brushing and spraying: common practice, editable",
  ],
  example: {
    input: {
      areaM2: 1.2,
      method: "brush",
      coats: 2,
      cutLbPerGal: 1,
      solvent: { alcohol: "ethanol", volumeFraction: 0.96 },
      windows: [["2026-10-05T18:00", "2026-10-05T22:00"]],
    },
    output: { solutionUsedMl: 300.96, solutionToMixMl: 361.15, eveningsUsed: 1, unplacedSteps: 0 },
  },
});
