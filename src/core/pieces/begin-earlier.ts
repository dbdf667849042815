import type { ShopClock } from "../schedule/shop-clock.ts";
import { benchTime, clock as clockText } from "./bench-time.ts";
import { coatNumbers, type DatedStep } from "./planned-evenings.ts";
import { type ShopWindow, windowsFromNow } from "./shop-windows.ts";

/** Coats that come due after an evening has ended, and from when it would have to begin for them to go on that evening. */
export interface BeginEarlier<S> {
  /** The evening as it would be, as 2026-10-05T17:40. */
  readonly from: string;
  readonly until: string;
  /** As they are planned now, for a later evening. */
  readonly coats: readonly S[];
  /** When the first of them comes due, by the clock on the wall. */
  readonly due: string;
}

/** A beginning is told to five minutes, and one six hours earlier is another evening. */
const step = 5;
const mostEarlier = 360;

interface PlanOn<S> {
  readonly steps: readonly S[];
  /** The plan on other evenings; null where there is none. */
  readonly on: (windows: readonly ShopWindow[]) => readonly S[] | null;
}

const keyOf = ({ surface }: DatedStep, coat: number): string => `${coat} ${surface ?? ""}`;

/** The coats that are done by the end of a day, by number and surface. */
function doneBy<S extends DatedStep>(steps: readonly S[], day: string): ReadonlySet<string> {
  return new Set(
    [...coatNumbers(steps)].flatMap(([one, coat]) =>
      one.day !== undefined && one.at !== undefined && one.day <= day ? [keyOf(one, coat)] : [],
    ),
  );
}

/** When a coat may go on by what is done before it on that day; undefined where nothing is. */
function dueOf<S extends DatedStep>(
  steps: readonly S[],
  coat: S,
  day: string,
  clock: ShopClock,
): number | undefined {
  const before = steps
    .slice(0, steps.indexOf(coat))
    .findLast((one) => one.day === day && one.at !== undefined && one.surface === coat.surface);
  return before === undefined
    ? undefined
    : clock.minutesPastSkip(`${day}T${before.at}`, "steps") +
        (before.minutes ?? 0) +
        (before.leastWaitMinutes ?? 0);
}

/** The least of whole steps from 1 to most for which it is so, where it stays so once it is; undefined where it never is. */
function firstOf(most: number, isSo: (steps: number) => boolean): number | undefined {
  if (most < 1 || !isSo(most)) return undefined;
  let [no, yes] = [0, most];
  while (yes - no > 1) {
    const middle = (no + yes) >> 1;
    if (isSo(middle)) yes = middle;
    else no = middle;
  }
  return yes;
}

/**
 * The first evening of a plan after whose end a coat comes due, and its latest beginning at which that coat goes on the same
 * evening: found by planning anew.
 *
 * @param plan     as it stands, and how it is planned on other evenings
 * @param windows  evenings in order, none overlapping
 * @param now      by the clock on the wall; nothing begins before it
 * @param clock    of the zone in which the hours are meant
 * @returns        the evening as it would be, with the coats; null where no earlier beginning helps
 * @throws DomainError for a window that is no time at the bench
 *
 * Valid:  beginnings in steps of five minutes, up to six hours earlier on the same day; a planner whose coats never come later for
 *         a longer evening
 * Source: the definition, by trial
 */
export function beginEarlier<S extends DatedStep>(
  plan: PlanOn<S>,
  windows: readonly ShopWindow[],
  now: string,
  clock: ShopClock,
): BeginEarlier<S> | null {
  const left = windowsFromNow(windows, now);
  for (const [i, [from, until]] of left.entries()) {
    const { day, minute } = benchTime(from, "windows");
    const before = doneBy(plan.steps, day);
    const earlier = (steps: number): ShopWindow => [`${day}T${clockText(minute - steps * step)}`, until];
    const floor = [now, left[i - 1]?.[1] ?? now, `${day}T00:00`].reduce((a, b) => (a > b ? a : b));
    const room = minute - (floor.startsWith(day) ? benchTime(floor, "now").minute : minute);
    const gained = (steps: number): ReadonlySet<string> => {
      const anew = plan.on(left.map((one, k) => (k === i ? earlier(steps) : one)));
      return anew === null ? before : doneBy(anew, day);
    };
    const least = firstOf(
      Math.floor(Math.min(mostEarlier, room) / step),
      (steps) => gained(steps).size > before.size,
    );
    if (least === undefined) continue;
    const done = gained(least);
    const coats = [...coatNumbers(plan.steps)]
      .filter(([one, coat]) => done.has(keyOf(one, coat)) && !before.has(keyOf(one, coat)))
      .map(([one]) => one);
    const due = coats.flatMap((one) => dueOf(plan.steps, one, day, clock) ?? []);
    if (due.length === 0) continue; // it waits for no coat of that evening: there is no room for it, that is all
    const [begins] = earlier(least);
    return { from: begins, until, coats, due: clock.clock(Math.min(...due)).slice(0, 16) };
  }
  return null;
}
