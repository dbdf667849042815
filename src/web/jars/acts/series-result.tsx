import { For, Show } from "solid-js";
import { known, withDigits } from "../../words/number.ts";
import * as words from "../../words/words.ts";
import { giveOrTake } from "../jar-text.ts";
import type { SeriesPlan } from "../series-plan.ts";

const whole = (ml: number): string => String(Math.round(ml));

/** What to pour for each cut, what the simple ratio would have made of it, and what the stock comes to. */
export function SeriesResult(props: {
  readonly plan: SeriesPlan;
  readonly codes: readonly string[];
  readonly from: string;
}) {
  const t = words.jars.acts.series;
  return (
    <div class="reckoned stack" aria-live="polite">
      <ol class="plain series-sums">
        <For each={props.plan.cuts}>
          {(one, i) => {
            const sure = known(one.toCutLbPerGal, giveOrTake(one.cutStandardUncertainty));
            return (
              <li>
                <b>{t.into(props.codes[i()] ?? "")}</b>{" "}
                {words.jars.acts.thin.sum(whole(one.stockMl), props.from, whole(one.addMl), whole(one.addG))}{" "}
                {words.jars.acts.thin.makes(whole(one.resultMl), sure.value, sure.by)}{" "}
                <span class="soft">{t.simple(withDigits(one.simpleRatioWouldGive.cutLbPerGal, 3))}</span>
              </li>
            );
          }}
        </For>
      </ol>
      <p>
        <b>
          {t.needs(
            whole(props.plan.stockNeededMl),
            props.from,
            whole(props.plan.addMl),
            whole(props.plan.addG),
          )}
        </b>{" "}
        <Show when={props.plan.suffices}>{t.leaves(whole(props.plan.stockLeftMl))}</Show>
      </p>
      <Show when={!props.plan.suffices}>
        <p class="wrong">{t.short(whole(-props.plan.stockLeftMl))}</p>
      </Show>
    </div>
  );
}
