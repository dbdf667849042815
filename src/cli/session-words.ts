import { calendarDay, weekday } from "../core/pieces/calendar-day.ts";
import type { ProvenGoals } from "../core/schedule/plan-agenda.ts";

const days = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"] as const;

/** `Mon 2026-10-05` from a day, or from a clock time on it. */
export const dayWords = (clockTime: string): string => {
  const day = calendarDay(clockTime.slice(0, 10));
  return `${days[weekday(day)]} ${day}`;
};

/** `18:00`; with its offset where that hour comes a second time. */
export const hourWords = (clockTime: string): string => clockTime.slice(11);

/** `20 min`, `2 h`, `1 h 30 min`, `2 days`. */
export function lengthWords(minutes: number): string {
  const whole = Math.round(minutes);
  if (whole < 60) return `${whole} min`;
  if (whole >= 2880 && whole % 1440 === 0) return `${whole / 1440} days`;
  const rest = whole % 60;
  return `${Math.floor(whole / 60)} h${rest === 0 ? "" : ` ${rest} min`}`;
}

/** What is known of whether a plan could be bettered. */
export const provenWords: Readonly<Record<ProvenGoals, string>> = {
  finish: "No plan is done sooner; whether one takes fewer sessions is not settled.",
  "finish and sessions":
    "No plan is done sooner, or as soon in fewer sessions; whether one waits less is not settled.",
  "all goals": "No plan is done sooner, takes fewer evenings at the bench or leaves less waiting.",
};

const mostNamed = 4;

/** `Chairs: seal, coat 1 and 3 more`: what is done in one line. */
export function headingWords(name: string, works: readonly string[]): string {
  const each = [...new Set(works)];
  const more = each.length > mostNamed ? ` and ${each.length - mostNamed + 1} more` : "";
  return `${name}: ${each.slice(0, more === "" ? mostNamed : mostNamed - 1).join(", ")}${more}`;
}
