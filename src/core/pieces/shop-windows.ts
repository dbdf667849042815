import { DomainError } from "../domain-error.ts";
import { benchTime } from "./bench-time.ts";

/** From and until, by the clock on the wall, as 2026-10-05T18:00; in order of time. */
export type ShopWindow = readonly [from: string, until: string];

const touches = ([from, until]: ShopWindow, [begins, ends]: ShopWindow): boolean =>
  from < ends && begins < until;

/**
 * One evening at another time, the others where they are.
 *
 * @param windows  in order of time, none overlapping
 * @param day      the day that is moved, YYYY-MM-DD; its windows go
 * @param to       where it goes; what lies there already becomes part of it
 * @returns        windows in order of time
 * @throws DomainError for an evening that ends before it begins or is no time at the bench
 * @example
 * movedWindow([["2026-10-05T18:00", "2026-10-05T21:00"]], "2026-10-05", ["2026-10-06T17:00", "2026-10-06T20:00"])
 * // => [["2026-10-06T17:00", "2026-10-06T20:00"]]
 */
export function movedWindow(
  windows: readonly ShopWindow[],
  day: string,
  to: ShopWindow,
): readonly ShopWindow[] {
  benchTime(to[0], "from");
  benchTime(to[1], "until");
  if (to[1] <= to[0])
    throw new DomainError({
      code: "contradiction",
      field: "until",
      value: to[1],
      because: "An evening ends after it begins.",
    });
  const left = windows.filter(([from]) => !from.startsWith(day));
  const together = left.filter((one) => touches(one, to));
  const [from] = [to, ...together].map(([begins]) => begins).sort() as [string];
  const until = [to, ...together]
    .map(([, ends]) => ends)
    .sort()
    .at(-1) as string;
  const others = left.filter((one) => !touches(one, to));
  return [...others, [from, until] as const].sort((a, b) => (a[0] < b[0] ? -1 : 1));
}

/**
 * What is left of the windows from a moment on.
 *
 * @param windows  in order of time
 * @param now      by the clock on the wall, as 2026-10-05T19:40
 * @returns        those that have not ended; one under way begins now
 * @example
 * windowsFromNow([["2026-10-05T18:00", "2026-10-05T21:00"]], "2026-10-05T19:40") // => [["2026-10-05T19:40", "2026-10-05T21:00"]]
 */
export const windowsFromNow = (windows: readonly ShopWindow[], now: string): readonly ShopWindow[] =>
  windows
    .filter(([, until]) => until > now)
    .map(([from, until]) => [from < now ? now : from, until] as const);
