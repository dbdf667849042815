import type { Blush } from "../../core/evaporation/blush.ts";
import type { DryingSetup } from "../../core/evaporation/drying.ts";
import type { Own } from "../../core/evaporation/own-log.ts";
import type { DeliveryInput, DeliveryOutput } from "../../core/registry/delivery.ts";
import type { dryingAnswer } from "../../core/registry/drying.ts";
import type { Problem } from "../../core/registry/problem.ts";
import type { Result } from "../../core/result.ts";
import type { LogQuestions, WaitAnswer, WaitQuestion } from "../../core/views/wait-question.ts";

export type Dried = ReturnType<typeof dryingAnswer>;

/** What is reckoned of coats off the page's thread: what each task takes, and what it gives. */
export interface Tasks {
  /** The live margins of a bench, one a coat; null for a liquid without resin. `threshold` as the person's log has it, K. */
  readonly margins: {
    readonly takes: { readonly setups: readonly DryingSetup[]; readonly threshold: number };
    readonly gives: readonly (Blush | null)[];
  };
  /** Whole coats, each with its curve. */
  readonly drying: {
    readonly takes: {
      readonly setups: readonly DryingSetup[];
      readonly help: boolean;
      readonly threshold: number;
    };
    readonly gives: readonly Dried[];
  };
  /** What the person's own log says of waits and of turning white. */
  readonly own: {
    readonly takes: LogQuestions;
    readonly gives: { readonly wait: Own; readonly whitening: Own };
  };
  /** When layers may be coated again. */
  readonly waits: {
    readonly takes: { readonly questions: readonly WaitQuestion[]; readonly own: Own };
    readonly gives: readonly WaitAnswer[];
  };
  /** How likely a piece is done by each day. */
  readonly delivery: {
    readonly takes: DeliveryInput;
    readonly gives: Result<DeliveryOutput, Problem>;
  };
}
export type Task = keyof Tasks;

export interface Asked {
  readonly id: number;
  readonly task: Task;
  readonly input: unknown;
}
