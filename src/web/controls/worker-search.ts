import { createEffect, createMemo, createSignal, onCleanup } from "solid-js";

/** While somebody types, every letter is another question. */
const settledMs = 200;

/**
 * A search off the page's thread, begun anew as what is asked changes; one under way can be ended with what it has.
 *
 * @param asked  what to look for, or nothing
 * @param make   a worker that takes what is asked and tells of what it finds
 * @param isLast of what it tells, that it is the last word
 */
export function createWorkerSearch<A, T>(
  asked: () => A | null,
  make: () => Worker,
  isLast: (told: T) => boolean,
) {
  const question = createMemo(asked);
  const [last, setLast] = createSignal<{ readonly given: A; readonly told: T }>();
  /** What was told of another question is no answer to this one. */
  const told = () => {
    const heard = last();
    return heard !== undefined && heard.given === question() ? heard.told : undefined;
  };
  const [searching, setSearching] = createSignal(false);
  const [unfetched, setUnfetched] = createSignal(false);
  let worker: Worker | undefined;
  let hasSpoken = false;
  /** One that is still being fetched is let finish that: its request would never end otherwise. */
  const end = () => {
    const ending = worker;
    worker = undefined;
    setSearching(false);
    if (hasSpoken) ending?.terminate();
    else ending?.addEventListener("message", () => ending.terminate());
  };
  createEffect(() => {
    const given = question();
    end();
    setUnfetched(false);
    if (given === null) return;
    setSearching(true);
    const timer = setTimeout(() => begin(given), settledMs);
    onCleanup(() => clearTimeout(timer));
  });
  function begin(given: A): void {
    const own = make();
    worker = own;
    hasSpoken = false;
    own.addEventListener("message", ({ data }: MessageEvent<T>) => {
      if (worker !== own) return;
      hasSpoken = true;
      setLast({ given, told: data });
      if (isLast(data)) end();
    });
    own.addEventListener("error", () => {
      if (worker !== own) return;
      setUnfetched(told() === undefined); // out of reach, and these pages are not kept yet
      end();
    });
    own.postMessage(given);
  }
  onCleanup(end);
  return { told, searching, unfetched, end };
}
