import { Show } from "solid-js";
import { SearchBar } from "../controls/search-bar.tsx";
import * as words from "../words/words.ts";
import type { Plan } from "./draft.ts";

/** How sure it is that nothing is better; while that is being found out, a search that can be ended with what it has. */
export function HowGood(props: {
  readonly plan: Plan;
  readonly searching: boolean;
  readonly onEnd: () => void;
}) {
  return (
    <div class="how-good">
      <SearchBar searching={props.searching} says={words.pieces.lookingForBetter} onEnd={props.onEnd} />
      <Show when={!props.searching && props.plan.provenBest} keyed>
        {(proven) => <p class="soft">{words.trialEvenings.proven[proven]}</p>}
      </Show>
    </div>
  );
}
