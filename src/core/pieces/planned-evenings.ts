import type { ShopClock } from "../schedule/shop-clock.ts";

/** A step of a plan with its day and hour by the clock on the wall, as far as they are known. */
export interface DatedStep {
  readonly what: string;
  readonly day?: string | undefined;
  readonly at?: string | undefined;
  readonly minutes?: number | undefined;
  readonly leastWaitMinutes?: number | undefined;
  /** The side or part that it is done on, where the piece has several. */
  readonly surface?: string | undefined;
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

/** The coat number of each step that is a coat: on each surface they are counted from 1. */
export function coatNumbers<S extends DatedStep>(steps: readonly S[]): ReadonlyMap<S, number> {
  const counts = new Map<string | undefined, number>();
  const numbers = new Map<S, number>();
  for (const step of steps) {
    if (step.what !== "coat") continue;
    const number = (counts.get(step.surface) ?? 0) + 1;
    counts.set(step.surface, number);
    numbers.set(step, number);
  }
  return numbers;
}

/**
 * The steps that are behind: a coat that is on lies after them on the same surface, or they are that coat.
 *
 * @param steps  in order (n)
 * @param isOn   whether so many coats are on a surface; of the whole piece where none is named
 */
export function stepsBehind<S extends DatedStep>(
  steps: readonly S[],
  isOn: (coat: number, surface: string | undefined) => boolean,
): ReadonlySet<S> {
  const coats = coatNumbers(steps);
  const surfaces = new Set<string | undefined>();
  const behind = steps.toReversed().filter((step) => {
    const coat = coats.get(step);
    if (coat !== undefined && isOn(coat, step.surface)) surfaces.add(step.surface);
    return step.surface === undefined ? surfaces.size > 0 : surfaces.has(step.surface);
  });
  return new Set(behind);
}

const moment = ({ day, at }: DatedStep): string => `${day}T${at}`;

/** The steps with a day and an hour as they follow each other, whatever surface they are on. */
export const inTime = <S extends DatedStep>(steps: readonly S[]): readonly S[] =>
  steps
    .filter(({ day, at }) => day !== undefined && at !== undefined)
    .sort((a, b) => Number(moment(a) > moment(b)) - Number(moment(a) < moment(b)));

/**
 * The evenings of a plan in real time: where the clocks change, each step still takes its minutes and waits its
 * wait, on its own surface.
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
  for (const step of inTime(steps)) days.set(step.day ?? "", [...(days.get(step.day ?? "") ?? []), step]);
  return [...days.values()].map((together) => {
    const ready = new Map<string | undefined, number>();
    let until = Number.NEGATIVE_INFINITY;
    const timed = together.map((step) => {
      const asPlanned = clock.minutesPastSkip(moment(step), "steps");
      const from = Math.max(ready.get(step.surface) ?? asPlanned, asPlanned);
      const ends = from + (step.minutes ?? 0);
      until = Math.max(until, ends);
      ready.set(step.surface, ends + (step.leastWaitMinutes ?? 0));
      return { step, from, coat: coats.get(step) };
    });
    return { from: timed[0]?.from ?? until, until, steps: timed };
  });
}
