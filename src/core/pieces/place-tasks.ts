import { DomainError } from "../domain-error.ts";
import type { Span } from "./evening.ts";
import type { PieceWork } from "./finishing-step.ts";

/** Hands-on work with the waits after it; minutes, the most Infinity where there is none. */
export interface Task {
  readonly what: PieceWork;
  readonly minutes: number;
  readonly leastWait: number;
  readonly mostWait: number;
  readonly overnight: boolean;
}

/** Where a task went: its parts, in minutes since 1970 by the clock on the wall, and what found no room. */
export interface Place {
  readonly parts: readonly { readonly evening: number; readonly from: number; readonly minutes: number }[];
  readonly left: number;
  /** The evening in which it ends; past the last where it has no room. */
  readonly evening: number;
  readonly end: number;
}

/** Work that can be left and taken up again; a coat has a wet edge and is not. */
const canBeLeft: readonly PieceWork[] = ["sand", "de-nib", "level", "rub out"];
/** Less than this is not worth beginning. */
const leastPart = 15;

/** The first room for a task from an evening and a moment on. */
function roomFor(task: Task, evenings: readonly Span[], first: number, ready: number): Place {
  const parts: Place["parts"][number][] = [];
  let left = task.minutes;
  let end = ready;
  let evening = first;
  for (; evening < evenings.length; evening++) {
    const { opens, closes } = evenings[evening] as Span;
    const from = Math.max(opens, end);
    const room = closes - from;
    const minutes = canBeLeft.includes(task.what) && room >= leastPart ? Math.min(room, left) : left;
    if (minutes > room) continue;
    parts.push({ evening, from, minutes });
    left -= minutes;
    end = from + minutes;
    if (left <= 0) break;
  }
  return { parts, left, evening, end };
}

/**
 * Puts each task into the first evening that has room for it after the wait before it. Work that can be left is spread
 * over evenings; a night is waited where one is asked. Where the next task would come later than may be waited, the one
 * before it begins later by what was too much: since a later beginning never makes anything earlier, what this comes to
 * rest at is the earliest plan that there is.
 *
 * @param tasks     in order
 * @param evenings  in order, none overlapping
 * @returns         a place a task; those that the evenings do not reach have something left
 */
export function placeTasks(tasks: readonly Task[], evenings: readonly Span[]): readonly Place[] {
  const notBefore = tasks.map(() => Number.NEGATIVE_INFINITY);
  const places: Place[] = [];
  for (let i = 0; i < tasks.length; ) {
    const [before, task] = [tasks[i - 1], tasks[i] as Task];
    const done = places[i - 1];
    const first = done === undefined ? 0 : done.evening + (before?.overnight ? 1 : 0);
    const ready = done === undefined ? Number.NEGATIVE_INFINITY : done.end + (before?.leastWait ?? 0);
    const place = roomFor(task, evenings, first, Math.max(ready, notBefore[i] as number));
    const begins = place.parts[0]?.from;
    const [tooLate, began] = [
      begins === undefined || done === undefined ? 0 : begins - done.end - (before?.mostWait ?? 0),
      done?.parts[0]?.from,
    ];
    if (tooLate > 0 && began !== undefined) {
      notBefore[i - 1] = began + tooLate;
      i -= 1;
      continue;
    }
    places[i] = place;
    i += 1;
  }
  return places;
}

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

/**
 * Refuses a most wait that none of the evenings can keep, and says the nearest that they can.
 *
 * @param fieldOf  the name of the step that a task came from
 * @throws DomainError with the least figure that would do
 */
export function checkMostWaits(
  tasks: readonly Task[],
  evenings: readonly Span[],
  fieldOf: (task: number) => string,
): void {
  tasks.forEach((task, i) => {
    const next = tasks[i + 1];
    if (task.mostWait === Number.POSITIVE_INFINITY || next === undefined) return;
    const shortest = shortestWait(task, next, evenings);
    if (shortest > task.mostWait && shortest < Number.POSITIVE_INFINITY)
      throw new DomainError({
        code: "contradiction",
        field: `${fieldOf(i)}.mostWaitMinutes`,
        value: task.mostWait,
        limits: { min: shortest },
        because: `No two of the evenings lie so near; the nearest leave ${shortest} minutes between.`,
      });
  });
}
