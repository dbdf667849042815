import { DomainError } from "../domain-error.ts";
import { canBeLeft, leastPart } from "./bench-room.ts";
import type { Span } from "./evening.ts";
import { beforeOnSurface, type Task } from "./task.ts";

/** The shortest wait that any two of the evenings leave between a task and the next; Infinity where none holds both. */
function shortestWait(task: Task, next: Task, evenings: readonly Span[]): number {
  let shortest = Number.POSITIVE_INFINITY;
  const length = (t: Task): number =>
    canBeLeft.includes(t.what) ? Math.min(leastPart, t.minutes) : t.minutes;
  evenings.forEach((one, i) => {
    if (length(task) > one.closes - one.opens) return;
    for (const other of evenings.slice(task.overnight ? i + 1 : i)) {
      const longest = other.closes - length(next) - one.opens - length(task);
      if (length(next) > other.closes - other.opens || longest < task.leastWait) continue;
      shortest = Math.min(shortest, Math.max(task.leastWait, other.opens - one.closes));
      break; // a later evening is a longer wait
    }
  });
  return shortest;
}

/** What the other sides of a thing take between two works on one of them, each turned onto when it is dry enough. */
const turnedBetween = (tasks: readonly Task[], before: number, i: number): number =>
  i - before < 2
    ? 0
    : tasks
        .slice(before + 1, i)
        .reduce((sum, { minutes, turn }) => sum + minutes + turn, tasks[before]?.turn ?? 0);

const refused = (field: string, task: Task, min: number, because: string) =>
  new DomainError({ code: "contradiction", field, value: task.mostWait, limits: { min }, because });

/**
 * Refuses a most wait that none of the evenings, or no turning of the piece, can keep, and says the nearest that would do.
 *
 * @param tasks    of a lane, in order
 * @param fieldOf  the name of the step that a task came from
 * @throws DomainError with the least figure that would do
 */
export function checkMostWaits(
  tasks: readonly Task[],
  evenings: readonly Span[],
  fieldOf: (task: Task) => string,
): void {
  tasks.forEach((next, i) => {
    const before = beforeOnSurface(tasks, i);
    const task = tasks[before];
    if (task === undefined || task.mostWait === Number.POSITIVE_INFINITY) return;
    const field = `${fieldOf(task)}.mostWaitMinutes`;
    const turned = turnedBetween(tasks, before, i);
    if (turned > task.mostWait)
      throw refused(field, task, turned, `Meanwhile the other side is done and dries: ${turned} minutes.`);
    const shortest = shortestWait(task, next, evenings);
    if (shortest > task.mostWait && shortest < Number.POSITIVE_INFINITY)
      throw refused(
        field,
        task,
        shortest,
        `No two of the evenings lie so near; the nearest leave ${shortest} minutes between.`,
      );
  });
}
