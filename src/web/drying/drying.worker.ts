import "../no-eval.ts";
import { blushOfSetup } from "../../core/evaporation/blush.ts";
import { calculate } from "../../core/registry/calculation.ts";
import { delivery } from "../../core/registry/delivery.ts";
import { dryingAnswer } from "../../core/registry/drying.ts";
import { ownFrom, waitAnswer } from "../../core/views/wait-question.ts";
import type { Asked, Task, Tasks } from "./task.ts";

const tasks: { readonly [T in Task]: (input: Tasks[T]["takes"]) => Tasks[T]["gives"] } = {
  margins: ({ setups, threshold }) => setups.map((setup) => blushOfSetup(setup, threshold) ?? null),
  drying: ({ setups, help, threshold }) => setups.map((setup) => dryingAnswer(setup, help, threshold)),
  own: ownFrom,
  delivery: (input) => calculate(delivery, input) as Tasks["delivery"]["gives"], // what this calculation gives
  waits: ({ questions, own }) => questions.map((question) => waitAnswer(question, own)),
};

addEventListener("message", (event: MessageEvent<Asked>) => {
  const { id, task, input } = event.data;
  postMessage({ id, answer: tasks[task](input as never) }); // the page sends each task what it takes
});
