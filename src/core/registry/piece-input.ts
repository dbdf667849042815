import { z } from "zod";
import { usuallyTakesMore } from "../area/total.ts";
import { DomainError } from "../domain-error.ts";
import { benchTime } from "../pieces/bench-time.ts";
import type { Evening } from "../pieces/evening.ts";
import type { FinishingStep } from "../pieces/finishing-step.ts";
import { pieceMethods } from "../pieces/method-defaults.ts";
import type { PieceToPlan } from "../pieces/piece-to-plan.ts";
import { plainSteps } from "../pieces/plain-schedule.ts";
import { cutLbPerGal } from "./amount.ts";
import type { CutsMixed } from "./piece-mixes.ts";
import { readSteps, writtenStep } from "./piece-steps.ts";
import { begunOf, surfacesInput, surfacesOf } from "./piece-surfaces.ts";
import { resins, solvent } from "./solvent.ts";

/** A piece to be planned, as every door takes it. */
export const pieceInput = z.strictObject({
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
  ...surfacesInput,
  /** Evenings at the bench, from and until, wall-clock time. */
  windows: z.array(z.tuple([z.string(), z.string()])),
  zone: z
    .string()
    .describe("of the windows, such as Europe/Berlin: waits run in real time where its clocks change")
    .optional(),
  /** Coats that are on, and when the last was finished: the rest is planned after it, and what is behind has no date. */
  begun: z.strictObject({ coats: z.int(), at: z.string() }).optional(),
  spareShare: z.number().optional(),
  cureDays: z.number().optional(),
  /** The person's own numbers in place of the starting ones. */
  millilitresPerM2PerCoat: z.number().min(1).max(1000).optional(),
  transfer: z.number().min(0.01).max(1).optional(),
  minutesPerM2: z.number().min(0.1).max(600).optional(),
  leastWaitMinutes: z
    .number()
    .min(0)
    .max(10_080)
    .describe("between coats, in place of the usual ones")
    .optional(),
  temperatureC: z.number().optional(),
});

/** A piece as the examples of its calculations give it. */
export const examplePiece = {
  areaM2: 1.2,
  method: "brush",
  coats: 2,
  cutLbPerGal: 1,
  solvent: { alcohol: "ethanol", volumeFraction: 0.96 },
  windows: [["2026-10-05T18:00", "2026-10-05T22:00"]],
} satisfies z.input<typeof pieceInput>;

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

export type PieceGiven = z.output<typeof pieceInput>;

/** What a schedule says for each of its steps cannot be said for all of them too. */
function checkSaidOnce(given: PieceGiven): void {
  if (given.steps === undefined) return;
  const twice = (
    ["millilitresPerM2PerCoat", "transfer", "minutesPerM2", "leastWaitMinutes", "cureDays"] as const
  ).find((name) => given[name] !== undefined);
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
const own = (given: PieceGiven) => {
  const { millilitresPerM2PerCoat: ml, transfer, minutesPerM2, leastWaitMinutes: wait } = given;
  return {
    ...(ml === undefined ? {} : { litresPerM2: ml / 1000 }),
    ...(transfer === undefined ? {} : { transfer }),
    ...(minutesPerM2 === undefined ? {} : { minutesPerM2 }),
    ...(wait === undefined ? {} : { waits: [wait, wait, wait] as const }),
  };
};

function stepsOf(given: PieceGiven, { solids }: CutsMixed): readonly FinishingStep[] {
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

/**
 * The piece as the plan takes it.
 *
 * @throws DomainError for an evening that cannot be read, and for what is told twice
 */
export function pieceOf(given: PieceGiven, recipe: CutsMixed): PieceToPlan {
  checkSaidOnce(given);
  return {
    areaM2: given.areaM2,
    endGrain: { areaM2: given.endGrainM2, times: given.endGrainTimes },
    steps: stepsOf(given, recipe),
    evenings: given.windows.map(eveningOf),
    ...(given.zone === undefined ? {} : { zone: given.zone }),
    ...surfacesOf(given),
    ...begunOf(given),
    ...(given.spareShare === undefined ? {} : { spareShare: given.spareShare }),
  };
}
