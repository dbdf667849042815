import { type Agenda, type AgendaTask, placeOf, wrong } from "./agenda.ts";
import type { Open } from "./engine/openings.ts";

/**
 * The shortest wait of at least `least` minutes between the end of a task and the start of another that their windows allow.
 *
 * @param from     allowed starts of the first task [min], in order
 * @param minutes  how long it takes [min], scalar
 * @param to       allowed starts of the second [min], in order
 * @param least    shortest wait wanted [min], scalar
 * @param night    the second is for a later window than the first
 * @returns        minutes; infinite where no window comes late enough
 * @throws DomainError never
 *
 * Valid:  whole minutes
 * Source: the definition; of two windows the waits form an interval from b₀ − a₁ to b₁ − a₀
 * @example
 * shortestWait([[0, 60]], 30, [[1440, 1500]], 120) // => 1350
 */
export function shortestWait(
  from: readonly Open[],
  minutes: number,
  to: readonly Open[],
  least: number,
  night = false,
): number {
  let best = Number.POSITIVE_INFINITY;
  for (const [a0, a1] of from)
    for (const [b0, b1] of to) {
      if (night && b0 < a1 + minutes) continue;
      const wait = Math.max(least, b0 - a1 - minutes);
      if (wait <= b1 - a0 - minutes) best = Math.min(best, wait);
    }
  return best;
}

/** Every most-wait and every night of what is not done can be met by some window, whatever else there is to do. */
export function checkWaits(
  agenda: Agenda,
  starts: readonly (readonly Open[] | undefined)[],
  isDone: (task: number) => boolean,
): void {
  agenda.waits.forEach((wait, w) => {
    const { leastMinutes: least, mostMinutes: most, otherWindow: night = false } = wait;
    const field = `waits[${w}].mostMinutes`;
    if (wait.from === wait.to) throw wrong(`waits[${w}].to`, wait.to, "A task does not wait for itself.");
    if (most !== null && most < least) throw wrong(field, most, "It is shorter than the least wait.", least);
    const from = placeOf(agenda, wait.from, `waits[${w}].from`);
    const to = placeOf(agenda, wait.to, `waits[${w}].to`);
    const first = starts[from];
    const second = starts[to];
    const isHands = first !== undefined && second !== undefined;
    if (night && !isHands)
      throw wrong(
        `waits[${w}].otherWindow`,
        true,
        `Only hands-on tasks lie in windows, and ${first === undefined ? wait.from : wait.to} is none.`,
      );
    if (!isHands || (most === null && !night) || isDone(from) || isDone(to)) return;
    const nearest = shortestWait(first, agenda.tasks[from]?.minutes ?? 0, second, least, night);
    if (nearest === Number.POSITIVE_INFINITY)
      throw wrong(
        most === null ? `waits[${w}].otherWindow` : field,
        most ?? true,
        `No window comes after ${wait.from} at all.`,
      );
    if (most !== null && nearest > most)
      throw wrong(
        field,
        most,
        `No window comes so soon after ${wait.from}; the nearest that can be met is ${nearest} minutes.`,
        nearest,
      );
  });
}

/** The tasks of each round, by place in the agenda. */
export function roundsOf(agenda: Agenda): Map<string, number[]> {
  const rounds = new Map<string, number[]>();
  agenda.tasks.forEach(({ round }, k) => {
    if (round !== undefined) rounds.set(round, [...(rounds.get(round) ?? []), k]);
  });
  return rounds;
}

/** A round is hands-on, in one set-up, and fits a window. */
export function checkRounds(agenda: Agenda): void {
  const longest = longestWindow(agenda);
  for (const [round, places] of roundsOf(agenda)) {
    const members = places.map((k): [number, AgendaTask] => [k, agenda.tasks[k] as AgendaTask]);
    const setup = members[0]?.[1].setup;
    for (const [k, task] of members) {
      if (!task.hands) throw wrong(`tasks[${k}].round`, round, "Only hands-on tasks form a round.");
      if (task.setup !== setup)
        throw wrong(
          `tasks[${k}].setup`,
          task.setup,
          `The round ${round} is coated with ${setup ?? "bare hands"}.`,
        );
    }
    const minutes = members.reduce((sum, [, task]) => sum + task.minutes, 0);
    if (minutes > longest)
      throw wrong(
        `tasks[${places[0]}].round`,
        round,
        `The round takes ${minutes} minutes, and the longest window is ${longest}: make two of it.`,
      );
  }
}

/** The longest window, in minutes: nothing hands-on can be longer. */
export const longestWindow = (agenda: Agenda): number =>
  Math.max(0, ...agenda.windows.map(([from, until]) => until - from));
