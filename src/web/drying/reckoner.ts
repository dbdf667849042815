import type { Asked, Task, Tasks } from "./task.ts";

interface Waiting {
  readonly known: (answer: unknown) => void;
  readonly failed: (fault: Error) => void;
}

/** One worker a task, started when first asked: a long curve never holds up the live margins. */
class Lane {
  #worker: Worker | undefined;
  readonly #waiting = new Map<number, Waiting>();
  #asked = 0;

  ask(task: Task, input: unknown): Promise<unknown> {
    const id = ++this.#asked;
    return new Promise((known, failed) => {
      this.#waiting.set(id, { known, failed });
      this.#started().postMessage({ id, task, input } satisfies Asked);
    });
  }

  #started(): Worker {
    if (this.#worker !== undefined) return this.#worker;
    const worker = new Worker(new URL("./drying.worker.ts", import.meta.url), { type: "module" });
    worker.addEventListener("message", (event: MessageEvent<{ id: number; answer: unknown }>) => {
      this.#waiting.get(event.data.id)?.known(event.data.answer);
      this.#waiting.delete(event.data.id);
    });
    worker.addEventListener("error", (event) => this.#broke(event.message));
    this.#worker = worker;
    return worker;
  }

  /** It could not be fetched, or it fell over: whoever waits is told, and the next to ask starts another. */
  #broke(why: string): void {
    this.#worker?.terminate();
    this.#worker = undefined;
    for (const { failed } of this.#waiting.values()) failed(new Error(why));
    this.#waiting.clear();
  }
}

const lanes: Readonly<Record<Task, Lane>> = {
  margins: new Lane(),
  drying: new Lane(),
  own: new Lane(),
  waits: new Lane(),
  delivery: new Lane(),
};

export const reckon = <T extends Task>(task: T, input: Tasks[T]["takes"]): Promise<Tasks[T]["gives"]> =>
  lanes[task].ask(task, input) as Promise<Tasks[T]["gives"]>; // the worker gives each task what it promises
