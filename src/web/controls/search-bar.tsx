import { createEffect, createSignal, onCleanup, Show } from "solid-js";
import * as words from "../words/words.ts";

/** What is over sooner needs no bar, and one that comes and goes with every letter is a nuisance. */
const longMs = 1000;

/** A bar for a search that has gone on for a second, and a button that ends it with what it has. */
export function SearchBar(props: {
  readonly searching: boolean;
  readonly says: string;
  readonly onEnd: () => void;
}) {
  const [isLong, setLong] = createSignal(false);
  createEffect(() => {
    setLong(false);
    if (!props.searching) return;
    const timer = setTimeout(() => setLong(true), longMs);
    onCleanup(() => clearTimeout(timer));
  });
  return (
    <Show when={isLong()}>
      <div class="side-by-side not-on-paper">
        <progress aria-label={props.says} />
        <button type="button" onClick={() => props.onEnd()}>
          {words.trialEvenings.enough}
        </button>
      </div>
    </Show>
  );
}
