import { type FinishingStep, inARow, passes } from "./finishing-step.ts";
import type { PieceToPlan } from "./piece-to-plan.ts";
import { checkedSurfaces, type PieceSurface, thingsOf } from "./surfaces.ts";
import type { Task } from "./task.ts";

/** Nothing is done in less [min]. */
const leastMinutes = 5;

/** A schedule in the order in which its steps are done. */
export interface Laid {
  readonly steps: ReturnType<typeof inARow>;
  /** At least one; the one of a piece that is worked all at once has no name. */
  readonly surfaces: readonly PieceSurface[];
  /** The work up to the cure, by thing. */
  readonly lanes: readonly (readonly Task[])[];
  /** Where what comes after the evenings begins: the cure, and what waits for it. */
  readonly cure: number;
}

/** Hands on, for so much of a piece [min]. */
export const minutesOf = (step: FinishingStep, areaM2: number): number =>
  passes(step.what) ? 0 : Math.max(leastMinutes, Math.round(step.minutesPerM2 * areaM2));

type Work = Omit<Task, "surface" | "minutes"> & { readonly of: FinishingStep };

/** A wait counts to the work before it. */
const waitedLonger = (work: Work, wait: FinishingStep): Work => ({
  ...work,
  leastWait: work.leastWait + wait.leastWaitMinutes,
  mostWait: Math.min(work.mostWait, work.leastWait + (wait.mostWaitMinutes ?? Number.POSITIVE_INFINITY)),
  overnight: work.overnight || wait.overnight === true,
});

/** The work of the steps before the cure, each once, whatever it is done on. */
function worksOf(steps: readonly FinishingStep[], turnMinutes: number | undefined): readonly Work[] {
  const works: Work[] = [];
  steps.forEach((of, step) => {
    const before = works.at(-1);
    if (of.what === "wait" && before !== undefined) {
      works[works.length - 1] = waitedLonger(before, of);
      return;
    }
    const dries = of.driesMinutes ?? of.leastWaitMinutes;
    works.push({
      of,
      step,
      what: of.what,
      leastWait: of.leastWaitMinutes,
      mostWait: of.mostWaitMinutes ?? Number.POSITIVE_INFINITY,
      overnight: of.overnight === true,
      turn: of.what === "coat" ? (turnMinutes ?? dries) : dries,
      dries,
    });
  });
  return works;
}

/**
 * The steps as often as they are done, those before the cure as tasks for the evenings: each on every surface.
 *
 * @throws DomainError for surfaces that are none
 */
export function laidOut(piece: Pick<PieceToPlan, "steps" | "areaM2" | "surfaces" | "turnMinutes">): Laid {
  const surfaces = checkedSurfaces(piece.surfaces);
  const steps = inARow(piece.steps);
  const found = steps.findIndex(({ step }) => step.what === "cure");
  const cure = found < 0 ? steps.length : found;
  const works = worksOf(
    steps.slice(0, cure).map(({ step }) => step),
    piece.turnMinutes,
  );
  const lanes = thingsOf(surfaces).map((thing) =>
    works.flatMap(({ of, ...work }) =>
      thing.map((surface): Task => {
        const share = surfaces[surface]?.share ?? 1;
        return { ...work, surface, minutes: minutesOf(of, piece.areaM2 * share) };
      }),
    ),
  );
  return { steps, surfaces, lanes, cure };
}
