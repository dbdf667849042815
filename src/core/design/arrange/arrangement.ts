import { DomainError } from "../../domain-error.ts";
import type { LayoutKind, Plan, Treatment } from "../plan.ts";

/** What stands where. */
export interface Arrangement {
  /** For each board what stands at its places, in order. */
  readonly rows: readonly (readonly Treatment[])[];
  /** For each board a mark for each place: patches that share a mark over the boards are spread over the turns evenly. */
  readonly turns?: readonly (readonly number[])[];
}

/** Refuses a plan that a kind of layout cannot be made of, in words that say what would do. */
export function refuseKind(kind: LayoutKind, field: string, value: unknown, because: string): never {
  throw new DomainError({ code: "contradiction", field, value, because: `${because} (${kindNames[kind]})` });
}

const kindNames: Readonly<Record<LayoutKind, string>> = {
  "every-board": "everything on every board",
  "even-pairs": "every pair together equally often",
  square: "everything once at every place",
  "double-square": "everything once at every place and every turn",
  screen: "many things in few patches",
  best: "the patches that tell most",
  steps: "a step board",
};

/** Refuses forbidden patterns where a kind of layout has no choice about what stands where. */
export function refuseForbidden(kind: LayoutKind, plan: Plan): void {
  if (plan.forbidden.length > 0)
    refuseKind(
      kind,
      "forbidden",
      plan.forbidden,
      "Here everything has its place, and nothing can be left out. Everything on every board, or the best use of the places, would do.",
    );
}
