import { benchTime, clock } from "./bench-time.ts";
import type { ShopWindow } from "./shop-windows.ts";

/** What would end a plan on an earlier day. */
export interface Sooner {
  readonly how: "begin earlier" | "end later";
  /** By so much every evening [min]. */
  readonly minutes: number;
  /** The day on which the plan would end, YYYY-MM-DD. */
  readonly lastDay: string;
}

const step = 10;
const most = 180;

const shifted = (at: string, minutes: number): string => {
  const { day, minute } = benchTime(at, "windows");
  return `${day}T${clock(Math.min(1440, Math.max(0, minute + minutes)))}`;
};

const longer = (windows: readonly ShopWindow[], how: Sooner["how"], minutes: number): readonly ShopWindow[] =>
  windows.map(([from, until]) =>
    how === "begin earlier" ? [shifted(from, -minutes), until] : [from, shifted(until, minutes)],
  );

/**
 * By how little longer every evening must be for a plan to end on an earlier day: found by trying, ten minutes at a time, up
 * to three hours, at the beginning and at the end.
 *
 * @param windows    evenings in order, more than three hours apart
 * @param lastDayOf  the day on which a plan on such evenings ends, YYYY-MM-DD; null where they do not reach
 * @returns          the smaller change of the two, or null where three hours change nothing
 * @throws DomainError for a window that is no time at the bench
 *
 * Valid:  a planner whose end never comes later for longer evenings
 * Source: the definition, by trial
 */
export function soonerIf(
  windows: readonly ShopWindow[],
  lastDayOf: (windows: readonly ShopWindow[]) => string | null,
): Sooner | null {
  const now = lastDayOf(windows);
  if (now === null) return null;
  for (let minutes = step; minutes <= most; minutes += step)
    for (const how of ["begin earlier", "end later"] as const) {
      const lastDay = lastDayOf(longer(windows, how, minutes));
      if (lastDay !== null && lastDay < now) return { how, minutes, lastDay };
    }
  return null;
}
