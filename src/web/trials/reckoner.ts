import type { SealedKey } from "../../core/notebook/blind-key.ts";
import type { Problem } from "../../core/registry/problem.ts";
import type { Result } from "../../core/result.ts";

export type Task = "layout" | "verdict" | "seal" | "open";

export interface Asking {
  readonly id: number;
  readonly task: Task;
  readonly input: unknown;
}

/** What takes longer than a frame is done off the page's thread, in a worker that starts when first asked. */
let worker: Worker | undefined;
let asked = 0;
const waiting = new Map<number, (answer: unknown) => void>();

function theWorker(): Worker {
  if (worker !== undefined) return worker;
  worker = new Worker(new URL("./reckoner.worker.ts", import.meta.url), { type: "module" });
  worker.addEventListener("message", (event: MessageEvent<{ id: number; answer: unknown }>) => {
    waiting.get(event.data.id)?.(event.data.answer);
    waiting.delete(event.data.id);
  });
  return worker;
}

function done<T>(task: Task, input: unknown): Promise<T> {
  const id = ++asked;
  return new Promise((resolve) => {
    waiting.set(id, (answer) => resolve(answer as T)); // the worker answers each task with what it gives
    theWorker().postMessage({ id, task, input } satisfies Asking);
  });
}

/** The answer of a registered calculation, whose output has the shape `T`. */
export const reckon = <T>(name: "layout" | "verdict", input: unknown): Promise<Result<T, Problem>> =>
  done(name, input);
export const sealWithPassphrase = (text: string, passphrase: string): Promise<SealedKey> =>
  done("seal", { text, passphrase });
export const openWithPassphrase = (sealed: SealedKey, passphrase: string): Promise<Result<string, Problem>> =>
  done("open", { sealed, passphrase });
