import { type Accessor, createEffect, createSignal, onCleanup, untrack } from "solid-js";
import { reckon } from "./reckoner.ts";
import type { Task, Tasks } from "./task.ts";

export interface Reckoned<T extends Task> {
  /** The last answer, with what it answers; it stays in sight while the next is worked out. */
  readonly of: Tasks[T]["takes"];
  readonly answer: Tasks[T]["gives"];
}

export interface Reckoning<T extends Task> {
  readonly last: Accessor<Reckoned<T> | undefined>;
  readonly working: Accessor<boolean>;
  /** The reckoner could not be started: out of reach before it was ever fetched, say. */
  readonly failed: Accessor<boolean>;
  readonly again: () => void;
}

/** Follows what is asked: one question under way at a time, and of those that come meanwhile only the last. */
export function useReckoned<T extends Task>(
  task: T,
  input: Accessor<Tasks[T]["takes"] | undefined>,
): Reckoning<T> {
  const [last, setLast] = createSignal<Reckoned<T>>();
  const [working, setWorking] = createSignal(false);
  const [failed, setFailed] = createSignal(false);
  let next: Tasks[T]["takes"] | undefined;
  let asked = "";
  let gone = false;
  onCleanup(() => {
    gone = true;
  });

  async function work(): Promise<void> {
    setWorking(true);
    while (next !== undefined && !gone) {
      const of = next;
      next = undefined;
      try {
        const answer = await reckon(task, of);
        if (!gone && asked !== "") setLast({ of, answer });
      } catch {
        // The worker is gone, whatever the reason; that is told, and tried again when asked.
        setFailed(true);
        [next, asked] = [undefined, ""];
      }
    }
    setWorking(false);
  }
  function ask(): void {
    const now = input();
    const text = now === undefined ? "" : JSON.stringify(now);
    if (text === asked) return;
    asked = text;
    next = now;
    setFailed(false);
    if (now === undefined) setLast(undefined);
    else if (!untrack(working)) void work();
  }
  createEffect(ask);
  return { last, working, failed, again: ask };
}
