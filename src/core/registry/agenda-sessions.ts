import { type AgendaInput, readAgenda } from "./agenda-input.ts";

/** A task of a plan in real time [min since 1970 UTC]. */
export interface PlacedTask {
  readonly task: string;
  readonly from: number;
  readonly until: number;
}

/** From the first task to the end of the last. */
interface Session {
  readonly from: number;
  readonly until: number;
  readonly tasks: readonly PlacedTask[];
}

export interface SessionsOfAgenda {
  /** Windows in which somebody works, and days on which somebody did outside them, in order of time. */
  readonly sessions: readonly Session[];
  /** What needs no hands, in order of time. */
  readonly byThemselves: readonly PlacedTask[];
}

/** The sessions at the bench of a plan, from its agenda and the clock time at which each task starts. */
export function agendaSessions(
  given: AgendaInput,
  starts: Readonly<Record<string, string | number>>,
): SessionsOfAgenda {
  const { agenda, clock, origin } = readAgenda(given);
  const inOrder = (of: { readonly hands: boolean }): PlacedTask[] =>
    agenda.tasks
      .filter(({ hands }) => hands === of.hands)
      .map(({ task, minutes }) => {
        const from = clock.minutes(String(starts[task]), task);
        return { task, from, until: from + minutes };
      })
      .sort((a, b) => a.from - b.from);
  const whichOf = ({ from }: PlacedTask): string => {
    const at = from - origin;
    const window = agenda.windows.findIndex(([opens, closes]) => at >= opens && at < closes);
    return window >= 0 ? String(window) : clock.clock(from).slice(0, 10);
  };
  const sessions = new Map<string, Session>();
  for (const task of inOrder({ hands: true })) {
    const which = whichOf(task);
    const before = sessions.get(which) ?? { from: task.from, until: task.until, tasks: [] };
    sessions.set(which, {
      from: before.from,
      until: Math.max(before.until, task.until),
      tasks: [...before.tasks, task],
    });
  }
  return { sessions: [...sessions.values()], byThemselves: inOrder({ hands: false }) };
}
