import { inRange } from "../domain-error.ts";
import { eveningsAfter } from "./begun.ts";
import type { Evening } from "./evening.ts";
import { type FinishingStep, inARow, passes } from "./finishing-step.ts";
import type { Task } from "./place-tasks.ts";
import type { PieceToPlan } from "./plan.ts";

/** Nothing is done in less [min]. */
const leastMinutes = 5;

/** A schedule in the order in which its steps are done. */
export interface Laid {
  readonly steps: ReturnType<typeof inARow>;
  /** The work up to the cure, and which of the steps each is. */
  readonly tasks: readonly Task[];
  readonly stepOf: readonly number[];
  /** Where what comes after the evenings begins: the cure, and what waits for it. */
  readonly cure: number;
}

/** Hands on, for a whole piece [min]. */
export const minutesOf = (step: FinishingStep, areaM2: number): number =>
  passes(step.what) ? 0 : Math.max(leastMinutes, Math.round(step.minutesPerM2 * areaM2));

/** A wait counts to the work before it. */
const waitedLonger = (task: Task, wait: FinishingStep): Task => ({
  ...task,
  leastWait: task.leastWait + wait.leastWaitMinutes,
  mostWait: Math.min(task.mostWait, task.leastWait + (wait.mostWaitMinutes ?? Number.POSITIVE_INFINITY)),
  overnight: task.overnight || wait.overnight === true,
});

/** The steps as often as they are done, those before the cure as tasks for the evenings. */
export function laidOut(written: readonly FinishingStep[], areaM2: number): Laid {
  const steps = inARow(written);
  const found = steps.findIndex(({ step }) => step.what === "cure");
  const cure = found < 0 ? steps.length : found;
  const [tasks, stepOf]: [Task[], number[]] = [[], []];
  steps.slice(0, cure).forEach(({ step }, i) => {
    const before = tasks.at(-1);
    if (step.what === "wait" && before !== undefined) {
      tasks[tasks.length - 1] = waitedLonger(before, step);
      return;
    }
    tasks.push({
      what: step.what,
      minutes: minutesOf(step, areaM2),
      leastWait: step.leastWaitMinutes,
      mostWait: step.mostWaitMinutes ?? Number.POSITIVE_INFINITY,
      overnight: step.overnight === true,
    });
    stepOf.push(i);
  });
  return { steps, tasks, stepOf, cure };
}

/** What is still to be done, and the evenings for it. */
export interface Rest {
  /** How many of the tasks are behind us. */
  readonly after: number;
  readonly tasks: readonly Task[];
  readonly evenings: readonly Evening[];
}

/**
 * What is left of a schedule after the coats that are on.
 *
 * @throws DomainError for more coats than there are
 */
export function restOf(laid: Laid, { begun, evenings }: Pick<PieceToPlan, "begun" | "evenings">): Rest {
  if (begun === undefined) return { after: 0, tasks: laid.tasks, evenings };
  const coats = laid.tasks.flatMap(({ what }, i) => (what === "coat" ? [i] : []));
  inRange("begun.coats", begun.coats, { min: 1, max: coats.length });
  const last = coats[begun.coats - 1] as number; // counted in whole numbers from 1
  const after = last + 1;
  return {
    after,
    tasks: laid.tasks.slice(after),
    evenings: eveningsAfter(evenings, begun, laid.tasks[last] as Task),
  };
}
