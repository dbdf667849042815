import { DomainError } from "../../core/domain-error.ts";
import { type CalendarDay, calendarDay, daysLater } from "../../core/pieces/calendar-day.ts";
import { instantOfDay } from "../bench/state.ts";

/** The day that was chosen; undefined for one that cannot be read, or is still to come. */
export function dayChosen(
  choice: "today" | "yesterday" | "other",
  typed: string,
  today: string,
): CalendarDay | undefined {
  if (choice === "today") return calendarDay(today);
  if (choice === "yesterday") return daysLater(calendarDay(today), -1);
  try {
    const day = calendarDay(typed);
    return day > today ? undefined : day;
  } catch (error) {
    if (error instanceof DomainError) return undefined;
    throw error;
  }
}

export interface Shop {
  readonly now: string;
  readonly offset: (instant: string) => number;
  /** Nothing goes on before the boards were dealt their codes. */
  readonly laidOutAt: string;
}

/** Why a time cannot be the one meant. */
export type TimeFault =
  | { readonly code: "not-a-time"; readonly typed: string }
  | { readonly code: "ahead"; readonly at: string }
  | { readonly code: "too-early"; readonly after: string };

const minuteMs = 60_000;
const iso = (ms: number): string => new Date(ms).toISOString();

/** A night's small hours belong to the evening before. */
const nightEnds = "05:00";

/** The instant of a time of day. A day without an hour is written at its noon, or as soon after as `floor` allows. */
export function instantOn(
  day: CalendarDay,
  shop: Shop,
  clock: string | undefined,
  floor: string,
): string | TimeFault {
  const now = Date.parse(shop.now);
  const startOf = (one: CalendarDay, at: string) => instantOfDay(one, at, shop.offset);
  if (clock !== undefined) {
    const at = startOf(clock < nightEnds ? daysLater(day, 1) : day, clock);
    if (at > now) return { code: "ahead", at: iso(at) };
    return at < Date.parse(floor) ? { code: "too-early", after: floor } : iso(at);
  }
  if (startOf(day, "00:00") > now) return { code: "ahead", at: iso(startOf(day, "12:00")) };
  const at = Math.max(Math.min(startOf(day, "12:00"), now), Date.parse(floor) + minuteMs);
  const night = startOf(daysLater(day, 1), nightEnds);
  return at > Math.min(night, now) ? { code: "too-early", after: floor } : iso(at);
}
