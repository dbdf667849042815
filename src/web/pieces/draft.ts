import { usuallyTakesMore } from "../../core/area/total.ts";
import { calendarDay } from "../../core/pieces/calendar-day.ts";
import type { FinishingSchedule } from "../../core/pieces/finishing-schedules.ts";
import { type EveningChoice, windowsFrom } from "../../core/pieces/free-evenings.ts";
import type { LayerOver, LayerUnder } from "../../core/pieces/layers.ts";
import { coatsIn, mainCoat } from "../../core/pieces/main-coat.ts";
import type { PieceMethod } from "../../core/pieces/method-defaults.ts";
import { calculate } from "../../core/registry/calculation.ts";
import type { PiecePlanInput, PiecePlanOutput } from "../../core/registry/piece-schedule.ts";
import { piecePlan } from "../../core/registry/pieces.ts";
import type { Problem } from "../../core/registry/problem.ts";
import { fail, type Result } from "../../core/result.ts";
import type { OwnUse } from "../../core/views/planned-used.ts";
import type { PartDraft } from "./parts/part-draft.ts";
import { timesFrom } from "./parts/parts-total.ts";
import { type StepDraft, writtenFrom } from "./step-draft.ts";
import { allAtOnce, type SurfacesDraft, surfacesAsked } from "./surface-draft.ts";

export type PlanInput = PiecePlanInput;
export type Plan = PiecePlanOutput;

/** What is being typed for a new piece, exactly as typed. */
export interface PieceDraft extends SurfacesDraft {
  readonly name: string;
  readonly area: string;
  /** What the area is worked out from, where it is not simply told. */
  readonly parts: readonly PartDraft[];
  readonly endGrainTimes: string;
  readonly wood: string;
  readonly method: PieceMethod;
  readonly cut: string;
  readonly coats: string;
  readonly resin: string | undefined;
  readonly solvent: string | undefined;
  readonly firstEvening: string;
  readonly from: string;
  readonly until: string;
  readonly which: EveningChoice;
  readonly spare: string;
  readonly perM2: string;
  /** A day, or nothing. */
  readonly wanted: string;
  readonly under: LayerUnder;
  readonly over: LayerOver;
  /** Where its steps came from; nothing of it is reckoned with. */
  readonly schedule: FinishingSchedule | "plain" | "kept";
  /** In place of method, cut, coats and liquid; null for so many coats of one recipe. */
  readonly steps: readonly StepDraft[] | null;
}

/** What the fields come to; undefined where one cannot be read yet. */
export interface PieceFigures {
  readonly areaM2: number | undefined;
  /** Of the area, where it was worked out from parts. */
  readonly endGrainM2: number;
  readonly cutLbPerGal: number | undefined;
  /** As a calculation takes it. */
  readonly solvent: PlanInput["solvent"] | undefined;
  readonly own: OwnUse;
}

export const emptyDraft = (today: string): PieceDraft => ({
  name: "",
  area: "",
  parts: [],
  endGrainTimes: String(usuallyTakesMore.endGrainTimes),
  wood: "",
  method: "pad",
  cut: "1½ lb",
  coats: "4",
  resin: undefined,
  solvent: undefined,
  firstEvening: today,
  from: "18:00",
  until: "21:00",
  which: "every",
  spare: "20",
  perM2: "",
  wanted: "",
  under: "bare wood",
  over: "nothing",
  schedule: "plain",
  steps: null,
  ...allAtOnce,
});

const decimal = (text: string): number => Number(text.trim().replace(",", "."));

type OwnNumbers = Pick<PlanInput, "millilitresPerM2PerCoat" | "minutesPerM2" | "leastWaitMinutes">;

/** The liquid that was typed, or the person's own where there is enough of it; their own pace and waits likewise. */
function usePerM2(typed: string, own: OwnUse): OwnNumbers {
  const liquid = typed.trim() === "" ? own.millilitresPerM2?.value : decimal(typed);
  return {
    ...(liquid === undefined ? {} : { millilitresPerM2PerCoat: liquid }),
    ...(own.minutesPerM2 === null ? {} : { minutesPerM2: own.minutesPerM2.value }),
    ...(own.leastWaitMinutes === null ? {} : { leastWaitMinutes: Math.round(own.leastWaitMinutes.value) }),
  };
}

type Recipe = Pick<PlanInput, "method" | "coats" | "cutLbPerGal"> & Partial<PlanInput>;

/** So many coats of one recipe, or the steps with the recipe that they are known by; undefined while one cannot be read. */
function recipeOf(draft: PieceDraft, figures: PieceFigures): Recipe | undefined {
  if (draft.steps === null) {
    const { cutLbPerGal, own } = figures;
    if (cutLbPerGal === undefined) return undefined;
    return { method: draft.method, coats: decimal(draft.coats), cutLbPerGal, ...usePerM2(draft.perM2, own) };
  }
  const steps = draft.steps.flatMap((step) => writtenFrom(step) ?? []);
  if (steps.length < draft.steps.length) return undefined;
  const { method = draft.method, cutLbPerGal = 1 } = mainCoat(steps) ?? {};
  return { method, coats: coatsIn(steps), cutLbPerGal, steps };
}

/** What to ask of the plan, or undefined while something it needs cannot be read. */
export function planInput(draft: PieceDraft, figures: PieceFigures): PlanInput | undefined {
  const { areaM2, endGrainM2, solvent } = figures;
  const endGrainTimes = timesFrom(draft.endGrainTimes);
  const day = /^\d{4}-\d{2}-\d{2}$/.test(draft.firstEvening);
  const recipe = recipeOf(draft, figures);
  if (areaM2 === undefined || recipe === undefined || solvent === undefined || !day) return undefined;
  return {
    areaM2,
    ...(endGrainM2 > 0 && endGrainTimes !== undefined ? { endGrainM2, endGrainTimes } : {}),
    solvent,
    ...recipe,
    ...surfacesAsked(draft),
    spareShare: decimal(draft.spare) / 100,
    windows: windowsFrom(calendarDay(draft.firstEvening), draft.which, draft.from, draft.until),
  };
}

const readingFailed: Problem = {
  code: "missing",
  field: "input",
  message: "",
  value: null,
  limits: null,
};

export const planFrom = (input: PlanInput | undefined): Result<Plan, Problem> =>
  input === undefined ? fail(readingFailed) : (calculate(piecePlan, input) as Result<Plan, Problem>);
