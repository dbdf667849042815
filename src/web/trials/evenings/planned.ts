import type { ScheduleStep } from "../../../core/notebook/kinds/pieces.ts";
import { agendaSessions, type SessionsOfAgenda } from "../../../core/registry/agenda-sessions.ts";
import type { ClockPlan } from "../../../core/registry/schedule-agenda.ts";
import type { AgendaCoat, TrialAgenda } from "../../../core/registry/trial-agenda.ts";
import { shopClock } from "../../../core/schedule/shop-clock.ts";
import * as words from "../../words/words.ts";

/** A coat of one jar with the clock time at which it is planned. */
export interface PlannedCoat extends AgendaCoat {
  readonly day: string;
  readonly at: string;
  /** From when the next may follow. */
  readonly dryAt: string;
  /** A, B, C … for its jar, or nothing where nobody here can know it. */
  readonly letter: string;
}

export interface PlannedTrial {
  readonly sessions: SessionsOfAgenda["sessions"];
  /** In the order in which they are given. */
  readonly coats: readonly PlannedCoat[];
}

/** The jars of a plan in the order of their letters. */
export const jarsOf = (coats: readonly AgendaCoat[]): readonly (string | null)[] => [
  ...new Set(coats.map((coat) => coat.jar)),
];

/** A, B, C … for the jars, in their order. */
export const letterOf = (jar: string | null, jars: readonly (string | null)[]): string =>
  jar === null ? "" : String.fromCharCode(65 + jars.indexOf(jar));

/** A plan as its evenings and coats, by the clock on the wall; waits run in real time. */
export function plannedTrial({ input, coats }: TrialAgenda, plan: ClockPlan): PlannedTrial {
  const clock = shopClock(input.zone);
  const jars = jarsOf(coats);
  const { sessions } = agendaSessions(input, plan.starts);
  const placed = sessions.flatMap(({ tasks }) => tasks);
  return {
    sessions,
    coats: placed.flatMap(({ task, from, until }) => {
      const coat = coats.find((one) => one.task === task);
      if (coat === undefined) return [];
      const start = clock.clock(from);
      return {
        ...coat,
        day: start.slice(0, 10),
        at: start.slice(11, 16),
        dryAt: clock.clock(until + coat.leastWaitMinutes).slice(11, 16),
        letter: letterOf(coat.jar, jars),
      };
    }),
  };
}

/** Planned coats as the strip takes its steps. */
export const stripSteps = (coats: readonly PlannedCoat[]): readonly ScheduleStep[] =>
  coats.map(({ task, day, at, minutes, leastWaitMinutes, letter, coat }) => ({
    ...{ step: task, what: "coat" as const, day, at, minutes, leastWaitMinutes },
    note: words.trialEvenings.block(letter, coat),
  }));

/** The days of a plan, each with its coats. */
export function byDay(coats: readonly PlannedCoat[]): readonly (readonly [string, readonly PlannedCoat[]])[] {
  const days = new Map<string, PlannedCoat[]>();
  for (const coat of coats) days.set(coat.day, [...(days.get(coat.day) ?? []), coat]);
  return [...days];
}
