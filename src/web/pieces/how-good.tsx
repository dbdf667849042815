import { Show } from "solid-js";
import * as words from "../words/words.ts";
import type { Plan } from "./draft.ts";

/** How sure it is that nothing is better; while that is being found out, a search that can be ended with what it has. */
export function HowGood(props: {
  readonly plan: Plan;
  readonly searching: boolean;
  readonly onEnd: () => void;
}) {
  return (
    <>
      <Show when={props.searching}>
        <div class="side-by-side">
          <progress aria-label={words.pieces.lookingForBetter} />
          <button type="button" onClick={props.onEnd}>
            {words.trialEvenings.enough}
          </button>
        </div>
      </Show>
      <Show when={props.plan.provenBest} keyed>
        {(proven) => <p class="soft">{words.trialEvenings.proven[proven]}</p>}
      </Show>
    </>
  );
}
