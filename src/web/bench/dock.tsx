import { createSignal, Show } from "solid-js";
import type { DueCoat } from "../../core/views/bench.ts";
import { UndoStrip } from "../controls/undo-strip.tsx";
import * as words from "../words/words.ts";
import type { Bench } from "./use-bench.ts";

/** The one thing to press, and its undo, always in the same place under the thumb. */
export function Dock(props: { readonly bench: Bench; readonly coat: DueCoat }) {
  const [told, setTold] = createSignal(false);
  const act = () => setTold(!props.bench.write());
  const nothing = () => told() && props.bench.chosen().length === 0;
  return (
    <div class="dock not-on-paper">
      <Show
        when={props.bench.written()}
        fallback={
          <>
            <Show when={nothing()}>
              <p role="alert">{words.bench.noneChosen}</p>
            </Show>
            <button type="button" class="main" onClick={act}>
              {words.bench.act(props.coat.coat, props.bench.chosen().length)}
            </button>
          </>
        }
      >
        {(written) => (
          <UndoStrip
            says={
              <>
                {words.bench.wrote(written().coat.coat, written().hands)} <b>{written().codes.join(" ")}</b>
              </>
            }
            onUndo={() => props.bench.undo()}
          />
        )}
      </Show>
    </div>
  );
}
