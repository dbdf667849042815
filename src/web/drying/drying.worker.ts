import "../no-eval.ts";
import { DomainError } from "../../core/domain-error.ts";
import { type Blush, blushOfSetup } from "../../core/evaporation/blush.ts";
import { calculate } from "../../core/registry/calculation.ts";
import { drying } from "../../core/registry/drying.ts";
import { dryingInput, setupFromInput } from "../../core/registry/drying-input.ts";
import type { Asked, DryingInput, Task } from "./task.ts";

/** Followed only to where the film sets; null where the model has nothing to say, which a page tells in its own words. */
function marginOf(input: DryingInput): Blush | null {
  const read = dryingInput.safeParse(input);
  if (!read.success) return null;
  try {
    return blushOfSetup(setupFromInput(read.data)) ?? null;
  } catch (error) {
    if (error instanceof DomainError) return null;
    throw error;
  }
}

const tasks: Readonly<Record<Task, (inputs: readonly DryingInput[]) => unknown>> = {
  margins: (inputs) => inputs.map(marginOf),
  drying: (inputs) => inputs.map((input) => calculate(drying, input)),
};

addEventListener("message", (event: MessageEvent<Asked>) => {
  const { id, task, input } = event.data;
  postMessage({ id, answer: tasks[task](input as readonly DryingInput[]) }); // each task takes coats
});
