import { createWorkerSearch } from "../controls/worker-search.ts";
import type { Plan, PlanInput } from "./draft.ts";

export interface BetterAsked {
  readonly input: PlanInput;
}

/** The best plan so far, or the last word; null where there is none. */
export interface BetterTold {
  readonly plan: Plan | null;
  readonly done: boolean;
}

/** A plan that ends sooner, takes fewer evenings or waits less, looked for while nothing is typed. */
export function createBetterPlan(input: () => PlanInput | undefined) {
  const search = createWorkerSearch<BetterAsked, BetterTold>(
    () => {
      const given = input();
      return given === undefined ? null : { input: given };
    },
    () => new Worker(new URL("./better.worker.ts", import.meta.url), { type: "module" }),
    (told) => told.done,
  );
  return { plan: () => search.told()?.plan ?? null, searching: search.searching, end: search.end };
}
