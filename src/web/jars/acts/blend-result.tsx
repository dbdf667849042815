import { For, Show } from "solid-js";
import { known, withDigits } from "../../words/number.ts";
import * as words from "../../words/words.ts";
import type { BlendPlan } from "../blend-plan.ts";
import { giveOrTake } from "../jar-text.ts";

/** What the blend comes to, how sure that is, and what the mean in the head would have said. */
export function BlendResult(props: {
  readonly plan: BlendPlan;
  readonly codes: readonly string[];
  /** Of the jar that it goes into, m³. */
  readonly capacity: number | undefined;
}) {
  const t = words.jars.acts.blend;
  const blended = () => props.plan.blended;
  const sure = () => known(blended().cutLbPerGal, giveOrTake(blended().cutStandardUncertainty));
  const overflows = () => props.capacity !== undefined && blended().solutionMl > props.capacity * 1e6;
  return (
    <div class="reckoned stack" aria-live="polite">
      <p class="say sum">{t.makes(String(Math.round(blended().solutionMl)), sure().value, sure().by)}</p>
      <Show when={blended().contributions[0]?.source} keyed>
        {(source) => <p class="soft">{words.jars.mostOfIt(words.jars.source[source] ?? source)}</p>}
      </Show>
      <p class="soft">{t.simple(withDigits(props.plan.simpleCutLbPerGal, 3))}</p>
      <For each={props.plan.shortByMl}>
        {(short, i) => (
          <Show when={short > 0.5}>
            <p class="wrong">{t.short(props.codes[i()] ?? "", String(Math.round(short)))}</p>
          </Show>
        )}
      </For>
      <Show when={overflows()}>
        <p class="wrong">{words.jars.acts.thin.overflows}</p>
      </Show>
      <p class="soft">{t.inherits}</p>
    </div>
  );
}
