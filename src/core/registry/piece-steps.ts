import { z } from "zod";
import { DomainError } from "../domain-error.ts";
import { coatRoles, type FinishingStep, pieceWorks } from "../pieces/finishing-step.ts";
import { methodDefaults, type PieceMethod, pieceMethods } from "../pieces/method-defaults.ts";
import type { VolumeFraction } from "../units.ts";
import { cutLbPerGal } from "./amount.ts";

/** A step of a finishing schedule: once for so many times in a row. Method and cut are the plan's where they are not told. */
export const writtenStep = z.strictObject({
  what: z.enum(pieceWorks),
  as: z.enum(coatRoles).optional(),
  times: z.int().min(1).max(40).optional(),
  method: z.enum(pieceMethods).optional(),
  cutLbPerGal: cutLbPerGal.optional(),
  millilitresPerM2: z.number().min(1).max(1000).optional(),
  transfer: z.number().min(0.01).max(1).optional(),
  minutesPerM2: z.number().min(0).max(600),
  leastWaitMinutes: z.number().min(0),
  mostWaitMinutes: z.number().min(0).optional(),
  /** Whatever the least wait, the next step is for another evening. */
  overnight: z.boolean().optional(),
});
export type WrittenStepInput = z.output<typeof writtenStep>;

/** What every coat is made of and put on with, unless its step says otherwise. */
export interface Usual {
  readonly method: PieceMethod;
  readonly cutLbPerGal: number;
  readonly solids: (cutLbPerGal: number) => VolumeFraction;
}

const ofCoats = ["as", "times", "method", "cutLbPerGal", "millilitresPerM2", "transfer"] as const;

function checkWork(step: WrittenStepInput, field: string): void {
  const odd = ofCoats.find((name) => step[name] !== undefined);
  if (odd !== undefined)
    throw new DomainError({
      code: "contradiction",
      field: `${field}.${odd}`,
      value: step[odd],
      because: `Only a coat has it, and this step is “${step.what}”.`,
    });
}

/**
 * A written schedule as the plan takes it.
 *
 * @throws DomainError for a step of work that is told what only a coat has
 */
export const readSteps = (written: readonly WrittenStepInput[], usual: Usual): readonly FinishingStep[] =>
  written.map((given, i) => {
    const { what, times, minutesPerM2, leastWaitMinutes, mostWaitMinutes, overnight } = given;
    const step = {
      what,
      minutesPerM2,
      leastWaitMinutes,
      ...(times === undefined ? {} : { times }),
      ...(mostWaitMinutes === undefined ? {} : { mostWaitMinutes }),
      ...(overnight === undefined ? {} : { overnight }),
    };
    if (what !== "coat") {
      checkWork(given, `steps[${i}]`);
      return step;
    }
    const { litresPerM2, transfer } = methodDefaults[given.method ?? usual.method];
    const liquid = {
      litresPerM2: given.millilitresPerM2 === undefined ? litresPerM2 : given.millilitresPerM2 / 1000,
      transfer: given.transfer ?? transfer,
      volumeSolids: usual.solids(given.cutLbPerGal ?? usual.cutLbPerGal),
    };
    return { ...step, liquid };
  });
