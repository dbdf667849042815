import { DomainError } from "../../../core/domain-error.ts";
import { problemFromDomain } from "../../../core/registry/problem.ts";
import { scheduleAgenda } from "../../../core/registry/schedule-agenda.ts";
import type { Asked, Told } from "./planner.ts";

const steps = 4_000_000;
const tell = (told: Told): void => postMessage(told);

/** Plans off the page's thread and tells of each better plan; the page ends the worker when the person has seen enough. */
addEventListener("message", ({ data: { agenda } }: MessageEvent<Asked>) => {
  try {
    const found = scheduleAgenda(agenda, {
      steps,
      onBest: (plan, lowerBound) => tell({ done: false, plan, lowerBound, provenBest: null }),
    });
    tell({ done: true, ...found });
  } catch (error) {
    if (!(error instanceof DomainError)) throw error;
    tell({ refused: problemFromDomain(error.detail).message });
  }
});
