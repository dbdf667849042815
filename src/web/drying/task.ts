import type { Blush } from "../../core/evaporation/blush.ts";
import type { drying } from "../../core/registry/drying.ts";
import type { Problem } from "../../core/registry/problem.ts";
import type { Result } from "../../core/result.ts";

/** A coat in an air, as the calculation takes it. */
export type DryingInput = (typeof drying)["example"]["input"];
/** What the calculation of a drying coat gives. */
export type Dried = ReturnType<typeof drying.run>;

/** What is reckoned of coats off the page's thread: what each task takes, and what it gives. */
export interface Tasks {
  /** The live margins of a bench: one a coat, null where it cannot be reckoned. */
  readonly margins: { readonly takes: readonly DryingInput[]; readonly gives: readonly (Blush | null)[] };
  /** Whole coats, each with its curve. */
  readonly drying: {
    readonly takes: readonly DryingInput[];
    readonly gives: readonly Result<Dried, Problem>[];
  };
}
export type Task = keyof Tasks;

export interface Asked {
  readonly id: number;
  readonly task: Task;
  readonly input: unknown;
}
