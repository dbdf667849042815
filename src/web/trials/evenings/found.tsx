import { Show } from "solid-js";
import { dayName } from "../../pieces/plan-words.ts";
import * as words from "../../words/words.ts";
import type { Told } from "./planner.ts";

const t = words.trialEvenings;

/** When it ends, and how sure it is that nothing is better. */
export function Found(props: { readonly told: Extract<Told, { readonly done: boolean }> }) {
  const when = (at: string) => `${dayName(at.slice(0, 10))}, ${at.slice(11, 16)}`;
  const sure = () => {
    const { provenBest, lowerBound } = props.told;
    if (provenBest !== null) return t.proven[provenBest];
    return lowerBound === null ? "" : t.bound(when(lowerBound));
  };
  return (
    <Show when={props.told.plan} keyed fallback={<p>{t.none}</p>}>
      {(plan) => (
        <p>
          <b>{t.ends(when(plan.finish), plan.sessions)}</b> {sure()} {t.idle(plan.idleMinutes)}
        </p>
      )}
    </Show>
  );
}
