import { type Agenda, wrong } from "./agenda.ts";
import { roundsOf } from "./agenda-refusals.ts";
import type { Changes } from "./changes.ts";
import type { Past } from "./past.ts";

/** What one pair of hands does in one go: a task, or the tasks of a round. */
export interface Block {
  /** By place in the agenda, in order. */
  readonly tasks: readonly number[];
  readonly minutes: number;
  readonly kit: number;
  /** Who began it; −1 where nobody has. */
  readonly doneBy: number;
}

/** Several people who change their pads each for themselves. */
export interface Crew {
  readonly people: number;
  readonly blocks: readonly Block[];
  /** By task; −1 where it takes no hands. */
  readonly blockOf: Int32Array;
  /** Minutes from kit to kit. */
  readonly change: readonly Int32Array[];
}

const nobody = -1;

/** Who began a done task: the hands that may still hold its pad must be known. */
function whoDid(agenda: Agenda, past: Past, task: number): number {
  const who = past.who.get(task);
  if (who !== undefined) return who;
  throw wrong(
    "replan.who",
    agenda.tasks[task]?.task,
    "It was done so short a time ago that whose hands held its pad must be told, as a number from 1.",
  );
}

/**
 * Who shares the hands-on work, and in which blocks it goes to somebody.
 *
 * @param agenda   tasks, rounds and people
 * @param changes  kits by task (n), and minutes between them
 * @param past     what has been done of it, if any
 * @returns        the crew, or nothing where nobody changes pads or one person does it all
 * @throws DomainError when it is not told who did what may still be in the hand
 *
 * Valid:  tasks of one pair of hands each
 * Source: the definition
 */
export function crewOf(agenda: Agenda, changes: Changes, past?: Past): Crew | undefined {
  const people = agenda.capacity.person ?? 1;
  if (people === 1 || changes.minutes.length === 1) return undefined;
  const blocks: { tasks: number[]; minutes: number; kit: number; doneBy: number }[] = [];
  const blockOf = new Int32Array(agenda.tasks.length).fill(-1);
  const add = (task: number, to: number): number => {
    const [kit, minutes] = [changes.kitOf[task] as number, agenda.tasks[task]?.minutes ?? 0];
    const known = blocks[to];
    if (known !== undefined) {
      known.tasks.push(task);
      known.minutes += minutes;
      blockOf[task] = to;
      return to;
    }
    const doneBy = past?.done.has(task) ? whoDid(agenda, past, task) : nobody;
    blockOf[task] = blocks.push({ tasks: [task], minutes, kit, doneBy }) - 1;
    return blocks.length - 1;
  };
  for (const places of roundsOf(agenda).values()) {
    let block = -1;
    for (const task of places) {
      if (past?.done.has(task)) block = -1;
      else if ((changes.kitOf[task] as number) >= 0) block = add(task, block);
    }
  }
  for (const [task, kit] of changes.kitOf.entries()) if (kit >= 0 && blockOf[task] === -1) add(task, -1);
  return { people, blocks, blockOf, change: changes.minutes };
}
