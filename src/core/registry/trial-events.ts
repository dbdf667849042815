import { fallenAway } from "../calendar-file/fallen-away.ts";
import type { CalendarEvent } from "../calendar-file/write-calendar.ts";
import type { KeptEvening, TrialPlans } from "../views/trial-plans.ts";
import type { SessionsOfAgenda } from "./agenda-sessions.ts";

type Said = Pick<CalendarEvent, "summary" | "description">;
type Session = SessionsOfAgenda["sessions"][number];

/** How the evenings of a trial are put into words. */
export interface TrialWords {
  readonly evening: (session: Session) => Said;
  /** An evening that is not in the plan any more. */
  readonly gone: () => Said;
}

const minuteOf = (instant: string): number => Math.round(Date.parse(instant) / 60_000);
const uidOf = (trial: string, evening: number): string => `${trial}-evening-${evening + 1}`;

/** How many evenings of the plan that stands are over: they keep their numbers, and those to come are counted on. */
const over = (now: readonly KeptEvening[], minute: number): number =>
  now.filter(({ until }) => minuteOf(until) <= minute).length;

/**
 * What of a trial's plan goes into a calendar: each evening to come, by its number among all that the trial has, so that a later
 * plan moves the same events; and those that earlier plans had and this one has not, cancelled.
 *
 * @param trial     its id
 * @param sessions  of the plan, in order of time (n)
 * @param plans     what was kept before
 * @param now       minutes since 1970 UTC
 * @param says      the words for an evening
 * @returns         events, evenings to come first
 * @throws DomainError never
 *
 * Valid:  an evening that is over stays in the calendar as it was
 * Source: RFC 5545, sections 3.8.4.7 (ids) and 3.8.1.11 (status)
 */
export function trialEvents(
  trial: string,
  sessions: readonly Session[],
  plans: TrialPlans,
  now: number,
  says: TrialWords,
): CalendarEvent[] {
  const before = over(plans.now, now);
  const events = sessions.map(
    (session, i): CalendarEvent => ({
      uid: uidOf(trial, before + i),
      time: { from: session.from, until: session.until },
      ...says.evening(session),
    }),
  );
  const earlier = plans.evenings.flatMap((evenings) =>
    evenings.map(({ from, until }, i) => ({
      uid: uidOf(trial, i),
      time: { from: minuteOf(from), until: minuteOf(until) },
      ...says.gone(),
    })),
  );
  const past = new Set(Array.from({ length: before }, (_, i) => uidOf(trial, i)));
  return [...events, ...fallenAway(events, earlier).filter(({ uid }) => !past.has(uid))];
}

/** The evenings to be kept beside those of the plan that are over, as instants: what the next calendar counts on. */
export const eveningsToKeep = (
  sessions: readonly Session[],
  plans: TrialPlans,
  now: number,
): readonly KeptEvening[] => [
  ...plans.now.slice(0, over(plans.now, now)),
  ...sessions.map(({ from, until }) => ({
    from: new Date(from * 60_000).toISOString(),
    until: new Date(until * 60_000).toISOString(),
  })),
];
