import type { ShopClock } from "../schedule/shop-clock.ts";

/** A step of a plan with its day and hour by the clock on the wall, as far as they are known. */
export interface DatedStep {
  readonly what: string;
  readonly day?: string | undefined;
  readonly at?: string | undefined;
  readonly minutes?: number | undefined;
  readonly leastWaitMinutes?: number | undefined;
}

/** A step in real time [min since 1970 UTC]. */
interface TimedStep<S> {
  readonly step: S;
  readonly from: number;
  /** 1, 2, 3 … for coats. */
  readonly coat: number | undefined;
}

/** From the first step of an evening to the end of the last [min since 1970 UTC]. */
export interface PlannedEvening<S> {
  readonly from: number;
  readonly until: number;
  readonly steps: readonly TimedStep<S>[];
}

/** The coat number of each step that is a coat, in order. */
export function coatNumbers<S extends DatedStep>(steps: readonly S[]): ReadonlyMap<S, number> {
  const coats = steps.filter((step) => step.what === "coat");
  return new Map(coats.map((step, i) => [step, i + 1]));
}

/**
 * The evenings of a plan in real time: where the clocks change, each step still takes its minutes and waits its wait.
 *
 * @param steps  dated steps, in order (n); those without a day or an hour are in no evening
 * @param clock  of the zone in which the hours are meant
 * @returns      evenings in order, with their steps
 * @throws DomainError for an hour that is none
 *
 * Valid:  an hour that comes twice is meant the first time; one that is skipped, as much later as the clocks skip
 * Source: RFC 5545, section 3.3.5
 */
export function plannedEvenings<S extends DatedStep>(
  steps: readonly S[],
  clock: ShopClock,
): PlannedEvening<S>[] {
  const coats = coatNumbers(steps);
  const days = new Map<string, S[]>();
  for (const step of steps)
    if (step.day !== undefined && step.at !== undefined)
      days.set(step.day, [...(days.get(step.day) ?? []), step]);
  return [...days.values()].map((together) => {
    let until = Number.NEGATIVE_INFINITY;
    let ready = until;
    const timed = together.map((step) => {
      const from = Math.max(ready, clock.minutesPastSkip(`${step.day}T${step.at}`, "steps"));
      until = from + (step.minutes ?? 0);
      ready = until + (step.leastWaitMinutes ?? 0);
      return { step, from, coat: coats.get(step) };
    });
    return { from: timed[0]?.from ?? until, until, steps: timed };
  });
}
