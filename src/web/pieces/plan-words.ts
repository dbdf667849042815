import type { ScheduleStep } from "../../core/notebook/kinds/pieces.ts";
import { dayInWords, lengthInWords } from "../words/time.ts";
import * as words from "../words/words.ts";

/** `Fri 27 Nov`. A calendar day has no zone: it is read at noon so that no zone moves it. */
export const dayName = (day: string): string => {
  const noon = `${day}T12:00:00Z`;
  return dayInWords(noon, "UTC", noon);
};

/** `Coat 2`, `De-nib lightly with 320`. */
export function stepName(step: ScheduleStep, coat: number | undefined): string {
  if (step.what !== "coat" || coat === undefined) return words.pieces.work(step.what);
  const role = step.as === undefined ? "" : words.finishing.coatIs[step.as];
  return role === "" ? words.pieces.coatNumber(coat) : `${words.pieces.coatNumber(coat)}, ${role}`;
}

export const waitName = (step: ScheduleStep, next: ScheduleStep | undefined): string => {
  if (next === undefined) return "";
  if (step.what === "wait" && next.day !== step.day) return words.pieces.overnight;
  if ((step.leastWaitMinutes ?? 0) === 0) return "";
  return next.day !== undefined && next.day !== step.day && next.at !== undefined
    ? words.pieces.overnight
    : lengthInWords(step.leastWaitMinutes ?? 0);
};

/** `18:05` from minutes after midnight; past midnight it goes on from 00:00. */
export const clockOf = (minute: number): string =>
  `${String(Math.floor(minute / 60) % 24).padStart(2, "0")}:${String(Math.floor(minute % 60)).padStart(2, "0")}`;
