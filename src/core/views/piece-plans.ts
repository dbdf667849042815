import type { NotebookEntry } from "../notebook/entry.ts";
import type { Body } from "../notebook/kinds/all.ts";
import type { ScheduleStep } from "../notebook/kinds/pieces.ts";

export interface PiecePlans {
  /** How often the plan was changed: written anew, or struck out. */
  readonly changes: number;
  /** The steps of every plan that the piece ever had, oldest first. */
  readonly steps: readonly (readonly ScheduleStep[])[];
}

/** The plans that a piece had, struck ones too, from every entry in the notebook's order. */
export function piecePlans(entries: readonly NotebookEntry[], piece: string): PiecePlans {
  const plans = entries.filter((entry) => entry.kind === "piece-scheduled" && entry.about.includes(piece));
  const ids = new Set(plans.map((entry) => entry.id));
  const strikes = entries.filter(
    (entry) => !ids.has(entry.id) && entry.strikes.some((struck) => ids.has(struck)),
  );
  return {
    changes: Math.max(0, plans.length + strikes.length - 1),
    // a withdrawn one has no body any more
    steps: plans.map((entry) => (entry.body as Partial<Body<"piece-scheduled">>).steps ?? []),
  };
}
