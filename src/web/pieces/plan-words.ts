import type { ScheduleStep } from "../../core/notebook/kinds/pieces.ts";
import { dayInWords, lengthInWords } from "../words/time.ts";
import * as words from "../words/words.ts";

/** `Fri 27 Nov`. A calendar day has no zone: it is read at noon so that no zone moves it. */
export const dayName = (day: string): string => {
  const noon = `${day}T12:00:00Z`;
  return dayInWords(noon, "UTC", noon);
};

/** `Coat 2`, `Coat 2: underside`, `De-nib lightly with 320`. */
export function stepName(step: ScheduleStep, coat: number | undefined): string {
  const on = (name: string) => words.surfaces.on(name, step.surface);
  if (step.what !== "coat" || coat === undefined) return on(words.pieces.work(step.what));
  const role = step.as === undefined ? "" : words.finishing.coatIs[step.as];
  return on(role === "" ? words.pieces.coatNumber(coat) : `${words.pieces.coatNumber(coat)}, ${role}`);
}

/** `Coat 2`, `Coat 2 on underside`: as part of a sentence. */
export const coatName = (coat: number, surface: string | undefined): string =>
  surface === undefined
    ? words.pieces.coatNumber(coat)
    : words.surfaces.together(words.pieces.coatNumber(coat), [surface]);

/** The wait after a step, until the next on its surface. */
export function waitName(steps: readonly ScheduleStep[], at: number): string {
  const step = steps[at];
  const next = steps
    .slice(at + 1)
    .find(({ surface }) => step?.surface === undefined || surface === undefined || surface === step.surface);
  if (step === undefined || next === undefined) return "";
  if (step.what === "wait" && next.day !== step.day) return words.pieces.overnight;
  if ((step.leastWaitMinutes ?? 0) === 0) return "";
  return next.day !== undefined && next.day !== step.day && next.at !== undefined
    ? words.pieces.overnight
    : lengthInWords(step.leastWaitMinutes ?? 0);
}

/** `18:05` from minutes after midnight; past midnight it goes on from 00:00. */
export const clockOf = (minute: number): string =>
  `${String(Math.floor(minute / 60) % 24).padStart(2, "0")}:${String(Math.floor(minute % 60)).padStart(2, "0")}`;
