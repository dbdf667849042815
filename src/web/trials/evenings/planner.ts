import type { AgendaInput } from "../../../core/registry/agenda-input.ts";
import type { ClockPlan, ScheduledAgenda } from "../../../core/registry/schedule-agenda.ts";
import { createWorkerSearch } from "../../controls/worker-search.ts";

export interface Asked {
  readonly agenda: AgendaInput;
}

/** A plan, the best so far or the last word; or why there can be none. */
export type Told =
  | {
      readonly done: boolean;
      readonly plan: ClockPlan | null;
      readonly lowerBound: string | null;
      readonly provenBest: ScheduledAgenda["provenBest"];
    }
  | { readonly refused: string };

/** The best plan of an agenda, planned anew as the agenda changes; a search under way can be ended with what it has. */
export function createPlanner(agenda: () => AgendaInput | null) {
  const search = createWorkerSearch<Asked, Told>(
    () => {
      const given = agenda();
      return given === null ? null : { agenda: given };
    },
    () => new Worker(new URL("./evenings.worker.ts", import.meta.url), { type: "module" }),
    (told) => "refused" in told || told.done,
  );
  const refused = () => {
    const last = search.told();
    return last !== undefined && "refused" in last ? last.refused : undefined;
  };
  return { ...search, refused };
}
