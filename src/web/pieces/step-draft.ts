import type { FinishingSchedule, WrittenStep } from "../../core/pieces/finishing-schedules.ts";
import { scheduleSteps } from "../../core/pieces/finishing-schedules.ts";
import { type CoatRole, type PieceWork, passes } from "../../core/pieces/finishing-step.ts";
import { methodDefaults, type PieceMethod } from "../../core/pieces/method-defaults.ts";
import { cut, poundsPerUsGallonFromCut } from "../../core/units.ts";
import type { OwnUse } from "../../core/views/planned-used.ts";
import { fields, readQuantity } from "../controls/read-quantity.ts";
import { upToDigits } from "../words/number.ts";
import * as words from "../words/words.ts";
import { shortCut } from "./cut-text.ts";
import { readWait, waitTyped } from "./read-wait.ts";

/** A step as it is being typed. What only a coat has stands ready for when the step becomes one. */
export interface StepDraft {
  readonly what: PieceWork;
  readonly as: CoatRole;
  readonly times: string;
  readonly method: PieceMethod;
  readonly cut: string;
  readonly perM2: string;
  readonly minutes: string;
  readonly least: string;
  readonly most: string;
  readonly overnight: boolean;
}

/** What the person uses with a method, where there is enough of it to start from. */
export type OwnOf = (method: PieceMethod) => OwnUse;

/** A coat of an evening waits as the person's own do; a night stays a night. */
const ownWait = (step: WrittenStep, mine: number | undefined): number | undefined =>
  step.overnight === true || step.leastWaitMinutes === 0 || mine === undefined ? undefined : Math.round(mine);

/** A step as one would type it, the person's own figures in place of the usual ones. */
export function stepDraft(step: WrittenStep, own?: OwnOf): StepDraft {
  const method = step.method ?? "pad";
  const mine = step.what === "coat" ? own?.(method) : undefined;
  const usualMl = methodDefaults[method].litresPerM2 * 1000;
  const more = (step.millilitresPerM2 ?? usualMl) / usualMl;
  const ml = mine?.millilitresPerM2 == null ? step.millilitresPerM2 : mine.millilitresPerM2.value * more;
  return {
    what: step.what,
    as: step.as ?? "body",
    times: String(step.times ?? 1),
    method,
    cut: `${shortCut(step.cutLbPerGal ?? 1.5)} lb`,
    perM2: upToDigits(ml ?? usualMl, 3),
    minutes: upToDigits(mine?.minutesPerM2?.value ?? step.minutesPerM2, 3),
    least: waitTyped(ownWait(step, mine?.leastWaitMinutes?.value) ?? step.leastWaitMinutes),
    most: step.mostWaitMinutes === undefined ? "" : waitTyped(step.mostWaitMinutes),
    overnight: step.overnight ?? false,
  };
}

/** A common schedule to begin from. */
export const draftsOf = (schedule: FinishingSchedule, own: OwnOf): readonly StepDraft[] =>
  scheduleSteps[schedule].map((step) => stepDraft(step, own));

type TypedField = "times" | "cut" | "perM2" | "minutes" | "least" | "most";
export type StepProblems = Partial<Record<TypedField, string>>;

const decimal = (text: string): number => Number(text.trim().replace(",", "."));
const within = (text: string, min: number, max: number): boolean =>
  text.trim() !== "" && decimal(text) >= min && decimal(text) <= max;

function cutOf(typed: string): number | string {
  const read = readQuantity(typed, fields.cut);
  return read.ok ? poundsPerUsGallonFromCut(cut(read.value.si)) : read.problem.says;
}

/** What cannot be read of a step, field by field, with what would do. */
export function stepProblems(step: StepDraft): StepProblems {
  const t = words.finishing;
  const [least, most] = [readWait(step.least), readWait(step.most)];
  const cutRead = cutOf(step.cut);
  const ofCoat: StepProblems =
    step.what === "coat"
      ? {
          ...(within(step.times, 1, 40) && Number.isInteger(decimal(step.times))
            ? {}
            : { times: t.timesWrong }),
          ...(typeof cutRead === "string" ? { cut: cutRead } : {}),
          ...(within(step.perM2, 1, 1000) ? {} : { perM2: t.perM2Wrong }),
        }
      : {};
  const ofWaits: StepProblems = {
    ...(least === undefined ? { least: t.waitWrong } : {}),
    ...(step.most.trim() !== "" && most === undefined ? { most: t.waitWrong } : {}),
    ...(most !== undefined && least !== undefined && most < least ? { most: t.mostWrong } : {}),
  };
  const ofHands =
    passes(step.what) || within(step.minutes, 0, 600) ? {} : ({ minutes: t.minutesWrong } as const);
  return { ...ofCoat, ...ofHands, ...ofWaits };
}

/** The step as the plan takes it, or undefined while something of it cannot be read. */
export function writtenFrom(step: StepDraft): WrittenStep | undefined {
  if (Object.keys(stepProblems(step)).length > 0) return undefined;
  const most = step.most.trim() === "" ? undefined : readWait(step.most);
  const cutLbPerGal = cutOf(step.cut);
  return {
    what: step.what,
    minutesPerM2: passes(step.what) ? 0 : decimal(step.minutes),
    leastWaitMinutes: readWait(step.least) ?? 0,
    ...(most === undefined ? {} : { mostWaitMinutes: most }),
    ...(step.overnight ? { overnight: true } : {}),
    ...(step.what !== "coat" || typeof cutLbPerGal === "string"
      ? {}
      : {
          as: step.as,
          times: decimal(step.times),
          method: step.method,
          cutLbPerGal,
          millilitresPerM2: decimal(step.perM2),
        }),
  };
}

/** `Coat × 2: brush, 2 lb`, `Wait the night`: a step in one line. */
export function stepInWords(step: StepDraft): string {
  const t = words.finishing;
  if (step.what === "coat")
    return t.coat(step.as, decimal(step.times), words.pieces.methods[step.method].toLowerCase(), step.cut);
  if (step.what === "wait" && step.overnight) return t.night;
  return passes(step.what) ? t.waited(t.works[step.what], step.least) : t.works[step.what];
}
