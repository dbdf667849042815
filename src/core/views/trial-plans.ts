import type { NotebookEntry } from "../notebook/entry.ts";
import type { Body } from "../notebook/kinds/all.ts";

/** An evening of a plan, from and until, instants in UTC. */
export interface KeptEvening {
  readonly from: string;
  readonly until: string;
}

export interface TrialPlans {
  /** How often its evenings were kept anew, or struck out. */
  readonly changes: number;
  /** The evenings of every plan that was kept, oldest first, struck ones too: a calendar may still have them. */
  readonly evenings: readonly (readonly KeptEvening[])[];
  /** Of the plan that stands now. */
  readonly now: readonly KeptEvening[];
}

/** The evenings that were kept for a trial, from every entry in the notebook's order. */
export function trialPlans(entries: readonly NotebookEntry[], trial: string): TrialPlans {
  const kept = entries.filter((entry) => entry.kind === "free-time" && entry.about.includes(trial));
  const ids = new Set(kept.map((entry) => entry.id));
  const struck = new Set(entries.flatMap((entry) => entry.strikes).filter((id) => ids.has(id)));
  const strikes = entries.filter((entry) => !ids.has(entry.id) && entry.strikes.some((id) => ids.has(id)));
  // a withdrawn one has no body any more
  const of = (entry: NotebookEntry) => (entry.body as Partial<Body<"free-time">>).evenings ?? [];
  const standing = kept.findLast((entry) => !struck.has(entry.id));
  return {
    changes: Math.max(0, kept.length + strikes.length - 1),
    evenings: kept.map(of),
    now: standing === undefined ? [] : of(standing),
  };
}
