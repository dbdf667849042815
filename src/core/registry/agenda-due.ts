import { dueAfterHours } from "../schedule/due-after-hours.ts";
import { type AgendaInput, readAgenda, releaseOf } from "./agenda-input.ts";

/** Work that comes due too late for its session, in clock times. */
export interface DueOnClock {
  readonly from: string;
  readonly until: string;
  readonly tasks: readonly string[];
  readonly firstDue: string;
  readonly lastDue: string;
  /** The latest beginning that would do; null where none does. */
  readonly begin: string | null;
}

/**
 * What of a plan comes due when nobody is there any more, and from when each session would have to begin.
 *
 * @param given   the agenda as typed
 * @param starts  the clock time at which each task starts
 * @param now     the clock time before which nothing begins
 * @returns       sessions that have such work, in order of time
 * @throws DomainError for what `readAgenda` and `dueAfterHours` refuse
 *
 * Valid:  as `dueAfterHours`
 * Source: as `dueAfterHours`
 */
export function dueOnClock(
  given: AgendaInput,
  starts: Readonly<Record<string, string>>,
  now: string,
): DueOnClock[] {
  const { agenda: read, clock, origin } = readAgenda(given);
  // an agenda counts from its first window; here that one may begin earlier, and what was ready before it is ready then
  const tasks = read.tasks.map((task, k) => ({ ...task, notBefore: releaseOf(given, k, clock) - origin }));
  const agenda = { ...read, tasks };
  const at = (text: string): number => clock.minutes(text, "starts") - origin;
  const found = dueAfterHours(
    agenda,
    Object.fromEntries(Object.entries(starts).map(([task, start]) => [task, at(start)])),
    clock.minutesPastSkip(now, "now") - origin,
  );
  const told = (minute: number): string => clock.clock(origin + minute);
  return found.map(({ window, tasks, firstDue, lastDue, begin }) => {
    const [from, until] = agenda.windows[window] as readonly [number, number];
    return {
      ...{ from: told(from), until: told(until), tasks, firstDue: told(firstDue), lastDue: told(lastDue) },
      begin: begin === null ? null : told(begin),
    };
  });
}
