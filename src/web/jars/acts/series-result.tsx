import { For, Show } from "solid-js";
import { known, withDigits } from "../../words/number.ts";
import { words } from "../../words/words.ts";
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
  const totals = () => props.plan.totals;
  return (
    <div class="reckoned stack" aria-live="polite">
      <ol class="plain series-sums">
        <For each={props.plan.cuts}>
          {({ takenMl, thinned }, i) => {
            const sure = known(thinned.cutLbPerGal, giveOrTake(thinned.cutStandardUncertainty));
            return (
              <li>
                <b>{t.into(props.codes[i()] ?? "")}</b>{" "}
                {words.jars.acts.thin.sum(
                  whole(takenMl),
                  props.from,
                  whole(thinned.addMl),
                  whole(thinned.addG),
                )}{" "}
                {words.jars.acts.thin.makes(whole(thinned.resultMl), sure.value, sure.by)}{" "}
                <span class="soft">{t.simple(withDigits(thinned.simpleRatioWouldGive.cutLbPerGal, 3))}</span>
              </li>
            );
          }}
        </For>
      </ol>
      <p>
        <b>
          {t.needs(whole(totals().stockNeededMl), props.from, whole(totals().addMl), whole(totals().addG))}
        </b>{" "}
        <Show when={totals().suffices}>{t.leaves(whole(totals().stockLeftMl))}</Show>
      </p>
      <Show when={!totals().suffices}>
        <p class="wrong">{t.short(whole(-totals().stockLeftMl))}</p>
      </Show>
    </div>
  );
}
