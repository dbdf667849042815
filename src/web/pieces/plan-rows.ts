import type { ScheduleStep } from "../../core/notebook/kinds/pieces.ts";
import { benchTime } from "../../core/pieces/bench-time.ts";
import { coatNumbers } from "../../core/pieces/planned-evenings.ts";
import type { PlannedCoat } from "../../core/views/coats-on.ts";
import { clockOf, stepName, waitName } from "./plan-words.ts";
import { surfacesInShort } from "./surface-names.ts";

/** One row of a plan's table: a step, or the same step on surfaces that are worked one after another. */
export interface PlanRow {
  readonly name: string;
  readonly day: string | undefined;
  readonly at: string | undefined;
  /** When the last of them is done; absent where it is one step. */
  readonly until: string | undefined;
  readonly millilitres: number;
  readonly minutes: number;
  readonly wait: string;
  /** What became of it; absent where nothing did. */
  readonly done: string | undefined;
}

interface Gathered {
  readonly steps: readonly [ScheduleStep, ...ScheduleStep[]];
  readonly coat: number | undefined;
  readonly wait: string;
  readonly done: string | undefined;
}

/** Hours are told to the minute. */
const rounding = 1;

const minuteOf = ({ day, at }: ScheduleStep): number | undefined =>
  day === undefined || at === undefined ? undefined : benchTime(`${day}T${at}`, "steps").minute;

/** When the last of some steps of a day is done, in minutes after midnight; undefined where they have no hour. */
function endOf(steps: readonly ScheduleStep[]): number | undefined {
  const ends = steps.flatMap((step) => {
    const from = minuteOf(step);
    return from === undefined ? [] : [from + (step.minutes ?? 0)];
  });
  return ends.length === 0 ? undefined : Math.max(...ends);
}

/** The same work on another surface, that evening, with no pause before it, and with as much to be said of it. */
function goesOn(row: Gathered, next: Gathered): boolean {
  const [last, [step]] = [row.steps.at(-1) ?? row.steps[0], next.steps];
  const [before, until, from] = [minuteOf(last), endOf(row.steps), minuteOf(step)];
  return (
    last.surface !== undefined &&
    step.surface !== undefined &&
    stepName({ ...last, surface: undefined }, row.coat) ===
      stepName({ ...step, surface: undefined }, next.coat) &&
    last.day === step.day &&
    before !== undefined &&
    until !== undefined &&
    from !== undefined &&
    before <= from &&
    from <= until + rounding &&
    row.wait === next.wait &&
    row.done === next.done
  );
}

function told({ steps, coat, wait, done }: Gathered): PlanRow {
  const [first] = steps;
  const surfaces = steps.flatMap(({ surface }) => surface ?? []);
  const sum = (of: (step: ScheduleStep) => number | undefined) =>
    steps.reduce((all, step) => all + (of(step) ?? 0), 0);
  return {
    name: stepName(surfaces.length === 0 ? first : { ...first, surface: surfacesInShort(surfaces) }, coat),
    day: first.day,
    at: first.at,
    until: steps.length === 1 ? undefined : clockOf(endOf(steps) ?? 0),
    millilitres: sum((step) => step.millilitres),
    minutes: sum((step) => step.minutes),
    wait,
    done,
  };
}

/** The rows of a plan in its order; what was done of a coat keeps it apart from those of which that is not so. */
export function planRows(
  steps: readonly ScheduleStep[],
  doneOf: (coat: PlannedCoat) => string | undefined = () => undefined,
): readonly PlanRow[] {
  const coats = coatNumbers(steps);
  const rows: Gathered[] = [];
  for (const [i, step] of steps.entries()) {
    const coat = coats.get(step);
    const done =
      coat === undefined ? undefined : doneOf({ coat, ...(step.surface && { surface: step.surface }) });
    const next: Gathered = { steps: [step], coat, wait: waitName(steps, i), done };
    const row = rows.at(-1);
    if (row !== undefined && goesOn(row, next))
      rows[rows.length - 1] = { ...row, steps: [...row.steps, step] };
    else rows.push(next);
  }
  return rows.map(told);
}
