import { DomainError } from "../domain-error.ts";
import type { Open } from "./engine/openings.ts";

/** Minutes from the first window; a task with hands runs within one window. */
export interface AgendaTask {
  readonly task: string;
  readonly minutes: number;
  readonly hands: boolean;
  readonly needs: Readonly<Record<string, number>>;
  readonly notBefore: number;
  /** The pad and jar in the hand: from one to another takes a change. */
  readonly setup?: string;
  /** Tasks of one round follow each other without a break, in the order of the agenda. */
  readonly round?: string;
}

/** From the end of one task to the start of another. */
export interface AgendaWait {
  readonly from: string;
  readonly to: string;
  readonly leastMinutes: number;
  readonly mostMinutes: number | null;
  /** The second is for a later window than the first, whatever the minutes: a night lies between. */
  readonly otherWindow?: boolean;
}

/** Minutes from one set-up to another: `anyOther`, unless the pair is in `between`. */
export interface Setups {
  readonly anyOther: number;
  readonly between: readonly { readonly from: string; readonly to: string; readonly minutes: number }[];
}

export interface Agenda {
  readonly tasks: readonly AgendaTask[];
  readonly waits: readonly AgendaWait[];
  readonly capacity: Readonly<Record<string, number>>;
  /** In order of time, none overlapping. */
  readonly windows: readonly (readonly [from: number, until: number])[];
  readonly setups?: Setups;
}

/** A refusal of what contradicts something else that was given. */
export const wrong = (field: string, value: unknown, because: string, min?: number): DomainError =>
  new DomainError({
    code: "contradiction",
    field,
    value,
    because,
    ...(min === undefined ? {} : { limits: { min } }),
  });

/** The place of a task by its name. */
export function placeOf(agenda: Agenda, name: string, field: string): number {
  const at = agenda.tasks.findIndex((t) => t.task === name);
  if (at >= 0) return at;
  throw new DomainError({
    code: "unknown-name",
    field,
    value: name,
    limits: { allowed: agenda.tasks.slice(0, 12).map((t) => t.task) },
  });
}

/** How many pairs of hands a task takes. */
export const handsNeeded = ({ hands, needs }: AgendaTask): number => needs.person ?? (hands ? 1 : 0);

/** Starts that keep a task of so many minutes within one window. */
export const startsWithin = (windows: Agenda["windows"], task: AgendaTask): Open[] =>
  windows
    .map(([from, until]): Open => [Math.max(from, task.notBefore), until - task.minutes])
    .filter(([first, last]) => last >= first);
