import { DomainError, inRange } from "../domain-error.ts";
import type { VolumeFraction } from "../units.ts";
import { mostCoats } from "./coats-for-film.ts";

/** What a finishing schedule is made of: layers, work on the surface, and time that only passes. */
export const pieceWorks = [
  "sand",
  "coat",
  "de-nib",
  "level",
  "spirit-off",
  "wait",
  "cure",
  "rub out",
  "wax",
] as const;
export type PieceWork = (typeof pieceWorks)[number];

/** What a coat is for. It is a coat all the same: it is counted, it takes liquid and it leaves film. */
export const coatRoles = ["seal", "body", "tint"] as const;
export type CoatRole = (typeof coatRoles)[number];

export interface CoatLiquid {
  /** Wet liquid a square metre [m³/m² = m], in litres. */
  readonly litresPerM2: number;
  /** Share of it that is resin, by volume. */
  readonly volumeSolids: VolumeFraction;
  /** Share of what is used that stays as film. */
  readonly transfer: number;
}

/** One step of a schedule: a layer, work on the surface, or time that passes. */
export interface FinishingStep {
  readonly what: PieceWork;
  /** So many times in a row, once where it is not told; the waits are after each. */
  readonly times?: number;
  /** Hands on; nothing for a wait or a cure. */
  readonly minutesPerM2: number;
  /** From the end of this step to the beginning of the next [min]. */
  readonly leastWaitMinutes: number;
  readonly mostWaitMinutes?: number;
  /** From its end until it is dry enough to be lain on or put away; the least wait unless told. */
  readonly driesMinutes?: number;
  /** Whatever the least wait, the next step is for another evening; after the last time in a row. */
  readonly overnight?: boolean;
  /** With a coat, and only there. */
  readonly liquid?: CoatLiquid;
}

/** Time that only passes: nobody's hands are on the piece. */
export const passes = (what: PieceWork): boolean => what === "wait" || what === "cure";

/** Each step as often as it is done, with where it was written. */
export const inARow = (
  steps: readonly FinishingStep[],
): readonly { step: FinishingStep; written: number }[] =>
  steps.flatMap((step, written) => {
    const times = step.times ?? 1;
    const once = { step: { ...step, overnight: false }, written };
    return [...Array.from({ length: times - 1 }, () => once), { step, written }];
  });

/** A year; a wait that is longer is a mistake in its unit. */
const longestWait = 366 * 24 * 60;

function checkWaits(step: FinishingStep, field: string): void {
  inRange(`${field}.leastWaitMinutes`, step.leastWaitMinutes, { min: 0, max: longestWait });
  if (step.mostWaitMinutes === undefined) return;
  inRange(`${field}.mostWaitMinutes`, step.mostWaitMinutes, { min: 0, max: longestWait });
  if (step.mostWaitMinutes < step.leastWaitMinutes)
    throw new DomainError({
      code: "contradiction",
      field: `${field}.mostWaitMinutes`,
      value: step.mostWaitMinutes,
      limits: { min: step.leastWaitMinutes },
      because: "The most that may be waited is less than the least.",
    });
}

/**
 * Refuses a schedule that is not one.
 *
 * @param steps  in order; 1 to 40 of them coats, the first of them work
 * @throws DomainError that names the step and what of it, counted from 0
 */
export function checkSteps(steps: readonly FinishingStep[]): void {
  const coats = inARow(steps).filter(({ step }) => step.what === "coat").length;
  inRange("coats", coats, { min: 1, max: mostCoats });
  steps.forEach((step, i) => {
    const field = `steps[${i}]`;
    inRange(`${field}.times`, step.times ?? 1, { min: 1, max: mostCoats });
    inRange(`${field}.minutesPerM2`, step.minutesPerM2, { min: 0, max: 600 });
    checkWaits(step, field);
    if (step.what === "coat" && step.liquid === undefined)
      throw new DomainError({ code: "missing", field: `${field}.liquid`, value: null });
  });
  const first = steps[0] as FinishingStep; // there is a coat
  if (passes(first.what))
    throw new DomainError({
      code: "contradiction",
      field: "steps[0].what",
      value: first.what,
      because: "A schedule begins with work: there is nothing yet to wait for.",
    });
}
