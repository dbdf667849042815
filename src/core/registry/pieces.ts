import { z } from "zod";
import { usuallyTakesMore } from "../area/total.ts";
import { DomainError } from "../domain-error.ts";
import type { Begun } from "../pieces/begun.ts";
import { benchTime, clock } from "../pieces/bench-time.ts";
import type { Evening } from "../pieces/evening.ts";
import { coatRoles, type FinishingStep, pieceWorks } from "../pieces/finishing-step.ts";
import { methodDefaults, pieceMethods } from "../pieces/method-defaults.ts";
import { plainSteps } from "../pieces/plain-schedule.ts";
import { type PlannedStep, planPiece } from "../pieces/plan.ts";
import { cutLbPerGal } from "./amount.ts";
import { defineCalculation } from "./calculation.ts";
import { flag, flagsAbout } from "./flag.ts";
import { type CutsMixed, mixesOf, mixOutput, recipeOf } from "./piece-mixes.ts";
import { readSteps, writtenStep } from "./piece-steps.ts";
import { resins, solvent } from "./solvent.ts";

const input = z.strictObject({
  areaM2: z.number(),
  endGrainM2: z.number().min(0).default(0).describe("of the area, m²; `area` works it out"),
  endGrainTimes: z
    .number()
    .min(1)
    .max(10)
    .default(usuallyTakesMore.endGrainTimes)
    .describe("how many times as much of the first coat end grain takes: from memory"),
  method: z.enum(pieceMethods),
  /** In all, the sealing ones too. */
  coats: z.number(),
  cutLbPerGal,
  solvent,
  resins: resins.optional(),
  /** A finishing schedule in place of so many coats of one recipe; the method and the cut are those of its steps that tell none. */
  steps: z.array(writtenStep).min(1).max(80).optional(),
  /** Evenings at the bench, from and until, wall-clock time. */
  windows: z.array(z.tuple([z.string(), z.string()])),
  /** Coats that are on, and when the last was finished: the rest is planned after it, and what is behind has no date. */
  begun: z.strictObject({ coats: z.int(), at: z.string() }).optional(),
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
  /** Of a coat of a schedule that was given: what it is for, how it goes on, and of which cut. */
  as: z.enum(coatRoles).nullable(),
  method: z.enum(pieceMethods).nullable(),
  cutLbPerGal: z.number().nullable(),
  done: z.boolean(),
  at: z.string().nullable(),
  minutes: z.number(),
  solutionMl: z.number(),
  leastWaitMinutes: z.number(),
  mostWaitMinutes: z.number().nullable(),
});

const output = z.object({
  steps: z.array(step),
  solutionUsedMl: z.number(),
  solutionToMixMl: z.number(),
  resinG: z.number(),
  solventMl: z.number(),
  solventG: z.number(),
  /** What to mix of each cut, the spare with it, in the order in which they are needed. */
  mixes: z.array(mixOutput),
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

const begunOf = ({ coats, at: finished }: NonNullable<Given["begun"]>): Begun => ({
  coats,
  ...benchTime(finished, "begun.at"),
});

type Given = z.output<typeof input>;

/** What a schedule says for each of its steps cannot be said for all of them too. */
function checkSaidOnce(given: Given): void {
  if (given.steps === undefined) return;
  const twice = (["millilitresPerM2PerCoat", "transfer", "minutesPerM2", "cureDays"] as const).find(
    (name) => given[name] !== undefined,
  );
  if (twice !== undefined)
    throw new DomainError({
      code: "contradiction",
      field: twice,
      value: given[twice],
      because: "With steps given, each says it for itself.",
    });
  const coats = given.steps.reduce((sum, s) => sum + (s.what === "coat" ? (s.times ?? 1) : 0), 0);
  if (coats !== given.coats)
    throw new DomainError({
      code: "contradiction",
      field: "coats",
      value: given.coats,
      limits: { min: coats, max: coats },
      because: `The steps given have ${coats}.`,
    });
}

/** The person's own numbers in place of the usual ones. */
const own = (given: Given) => {
  const { millilitresPerM2PerCoat: ml, transfer, minutesPerM2 } = given;
  return {
    ...(ml === undefined ? {} : { litresPerM2: ml / 1000 }),
    ...(transfer === undefined ? {} : { transfer }),
    ...(minutesPerM2 === undefined ? {} : { minutesPerM2 }),
  };
};

function stepsOf(given: Given, { solids }: CutsMixed): readonly FinishingStep[] {
  const { method, coats, cutLbPerGal: cut, cureDays } = given;
  if (given.steps !== undefined) return readSteps(given.steps, { method, cutLbPerGal: cut, solids });
  return plainSteps({
    method,
    coats,
    volumeSolids: solids(cut),
    own: own(given),
    ...(cureDays === undefined ? {} : { cureDays }),
  });
}

/** What a planned coat is of: its own step where there is one, the plan's recipe otherwise. */
function coatOf(given: Given, { what, source }: PlannedStep) {
  if (what !== "coat") return { as: null, method: null, cutLbPerGal: null };
  const written = given.steps?.[source];
  return {
    as: written?.as ?? null,
    method: written?.method ?? given.method,
    cutLbPerGal: written?.cutLbPerGal ?? given.cutLbPerGal,
  };
}

export const piecePlan = defineCalculation({
  name: "piece-plan",
  purpose: "A recipe laid onto a real piece: dated steps, the liquid to mix, and the film at the end",
  input,
  output,
  run: (given) => {
    checkSaidOnce(given);
    const recipe = recipeOf(given);
    const plan = planPiece({
      areaM2: given.areaM2,
      endGrain: { areaM2: given.endGrainM2, times: given.endGrainTimes },
      steps: stepsOf(given, recipe),
      evenings: given.windows.map(eveningOf),
      ...(given.begun === undefined ? {} : { begun: begunOf(given.begun) }),
      ...(given.spareShare === undefined ? {} : { spareShare: given.spareShare }),
    });
    const steps = plan.steps.map((s) => ({
      what: s.what,
      coat: s.coat ?? null,
      ...coatOf(given, s),
      done: s.done === true,
      at: at(s),
      minutes: s.minutes,
      solutionMl: s.millilitres,
      leastWaitMinutes: s.waitMinutes,
      mostWaitMinutes: s.mostWaitMinutes ?? null,
    }));
    const spared = plan.millilitresToMix / plan.millilitresUsed;
    const mixes = mixesOf(recipe, steps, spared);
    const total = (of: (mix: (typeof mixes)[number]) => number) => mixes.reduce((sum, m) => sum + of(m), 0);
    return {
      steps,
      solutionUsedMl: plan.millilitresUsed,
      solutionToMixMl: plan.millilitresToMix,
      resinG: total((m) => m.resinG),
      solventG: total((m) => m.solventG),
      solventMl: total((m) => m.solventMl),
      mixes,
      dryUm: plan.dryFilm * 1e6,
      millilitresPerM2PerCoat:
        given.steps === undefined
          ? (own(given).litresPerM2 ?? methodDefaults[given.method].litresPerM2) * 1000
          : plan.millilitresUsed / given.areaM2 / given.coats,
      eveningsUsed: plan.eveningsUsed,
      unplacedSteps: plan.unplaced,
      flags: flagsAbout(recipe.density.flags, "solvent"),
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
