import { Show } from "solid-js";
import { known, withDigits } from "../../words/number.ts";
import * as words from "../../words/words.ts";
import { giveOrTake } from "../jar-text.ts";
import type { ThinPlan } from "../thin-plan.ts";

/** What to take and add, how sure it is, and what the simple ratio would have given. */
export function ThinResult(props: {
  readonly plan: ThinPlan;
  readonly from: string;
  /** Of the jar that it goes into, m³. */
  readonly capacity: number | undefined;
}) {
  const t = words.jars.acts.thin;
  const whole = (ml: number) => String(Math.round(ml));
  const sure = () =>
    known(props.plan.thinned.cutLbPerGal, giveOrTake(props.plan.thinned.cutStandardUncertainty));
  const weighed = () =>
    known(props.plan.thinned.cutLbPerGal, giveOrTake(props.plan.weighedStandardUncertainty)).by;
  const largest = () => props.plan.thinned.contributions[0]?.source;
  const overflows = () => props.capacity !== undefined && props.plan.thinned.resultMl > props.capacity * 1e6;
  return (
    <div class="reckoned stack">
      <p class="say sum">
        {t.sum(
          whole(props.plan.takenMl),
          props.from,
          whole(props.plan.thinned.addMl),
          whole(props.plan.thinned.addG),
        )}
      </p>
      <p>
        {t.makes(whole(props.plan.thinned.resultMl), sure().value, sure().by)}{" "}
        <Show when={largest()} keyed>
          {(source) => (
            <span class="soft">
              {words.jars.mix.mostOf(words.jars.source[source] ?? source)}
              {source === "jugMl" && weighed() !== sure().by
                ? t.weighInstead(whole(props.plan.takenG), weighed())
                : "."}
            </span>
          )}
        </Show>
      </p>
      <p class="soft">
        {t.simple(
          whole(props.plan.thinned.simpleRatioWouldGive.addMl),
          withDigits(props.plan.thinned.simpleRatioWouldGive.cutLbPerGal, 3),
        )}
      </p>
      <Show when={props.plan.shortByMl > 0.5}>
        <p class="wrong">{t.short(whole(props.plan.shortByMl))}</p>
      </Show>
      <Show when={overflows()}>
        <p class="wrong">{t.overflows}</p>
      </Show>
    </div>
  );
}
