import { createEffect, createSignal, type JSX, onCleanup, Show } from "solid-js";
import * as words from "../words/words.ts";
import type { Task } from "./task.ts";
import type { Reckoning } from "./use-reckoned.ts";

const saidAfterMs = 500;

/** While there is no answer: what fails, with another try; that it is being worked out, once that takes long; else what is told. */
export function NotReckoned<T extends Task>(props: {
  readonly reckoning: Reckoning<T>;
  readonly children?: JSX.Element;
}) {
  const [long, setLong] = createSignal(false);
  createEffect(() => {
    setLong(false);
    if (!props.reckoning.working() || props.reckoning.last() !== undefined) return;
    const timer = setTimeout(() => setLong(true), saidAfterMs);
    onCleanup(() => clearTimeout(timer));
  });
  return (
    <Show
      when={props.reckoning.failed()}
      fallback={
        <Show when={props.reckoning.working()} fallback={props.children}>
          <p class="soft" role="status">
            {long() ? words.drying.working : ""}
          </p>
        </Show>
      }
    >
      <div class="does-not-fit" role="alert">
        <p>{words.drying.failed}</p>
        <button type="button" onClick={() => props.reckoning.again()}>
          {words.drying.again}
        </button>
      </div>
    </Show>
  );
}
