import { dewaxedUpTo } from "../jar/dewaxed.ts";
import { type CalendarDay, daysLater } from "./calendar-day.ts";

/** Days from buying until flakes are tried before they are trusted. */
export const flakesKeepDays = {
  /** Waxy flakes keep for years: common practice; how many, from memory. */
  waxy: 5 * 365,
  /** Dewaxed and pale flakes keep for one to three years, two taken: common practice. */
  dewaxed: 2 * 365,
  /** Bleached flakes keep least of all: common practice; how long, from memory. */
  bleached: 180,
} as const;

/** Flakes as they are known on the shelf. */
export interface FlakesKept {
  readonly grade: string;
  /** By mass; null where it is not known, which counts as dewaxed: the shorter time. */
  readonly wax: number | null;
}

/**
 * The day from which flakes are tried in a little fresh alcohol before they are trusted. It orders what is used first;
 * the flakes themselves say whether they are dead.
 *
 * @example
 * goodUntil({ grade: "dewaxed lemon", wax: 0.005 }, calendarDay("2026-01-01")) // => "2028-01-01"
 */
export function goodUntil({ grade, wax }: FlakesKept, bought: CalendarDay): CalendarDay {
  if (/bleached|white/i.test(grade)) return daysLater(bought, flakesKeepDays.bleached);
  const waxy = wax !== null && wax > dewaxedUpTo;
  return daysLater(bought, waxy ? flakesKeepDays.waxy : flakesKeepDays.dewaxed);
}
