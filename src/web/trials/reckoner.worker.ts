import type { SealedKey } from "../../core/notebook/blind-key.ts";
import { openKey, sealKey } from "../../core/notebook/blind-key.ts";
import { calculate } from "../../core/registry/calculation.ts";
import { layoutCalculation } from "../../core/registry/design.ts";
import { verdictCalculation } from "../../core/registry/verdict.ts";
import type { Asking, Task } from "./reckoner.ts";

const randomBytes = (length: number): Uint8Array => crypto.getRandomValues(new Uint8Array(length));

const tasks: Readonly<Record<Task, (input: never) => unknown>> = {
  layout: (input) => calculate(layoutCalculation, input),
  verdict: (input) => calculate(verdictCalculation, input),
  seal: ({ text, passphrase }: { text: string; passphrase: string }) =>
    sealKey(text, { passphrase }, randomBytes),
  open: ({ sealed, passphrase }: { sealed: SealedKey; passphrase: string }) =>
    openKey(sealed, { passphrase }),
};

addEventListener("message", (event: MessageEvent<Asking>) => {
  const { id, task, input } = event.data;
  postMessage({ id, answer: tasks[task](input as never) }); // the page sends each task what it takes
});
