import { For, Show } from "solid-js";
import { stagesFor } from "../../../core/design/foresight/stages.ts";
import * as words from "../../words/words.ts";
import type { Asked } from "./draft.ts";
import { planOf } from "./plan.ts";

/** For a grid that is too large for its boards: what to ask first, and what after it. */
export function Stages(props: { readonly asked: Asked; readonly onTake: () => void }) {
  return (
    <Show when={stagesFor(planOf(props.asked))} keyed>
      {(stages) => (
        <section class="hung stack">
          <h2>{words.plan.stagesHeading}</h2>
          <For each={stages}>
            {({ stage, upTo, patches }) => <p>{words.plan.stage[stage](upTo, patches)}</p>}
          </For>
          <button type="button" class="main" onClick={() => props.onTake()}>
            {words.plan.takeScreen}
          </button>
        </section>
      )}
    </Show>
  );
}
