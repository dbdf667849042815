import { Show } from "solid-js";
import { withDigits } from "../words/number.ts";
import * as words from "../words/words.ts";
import { grams, millilitres } from "./amount-text.ts";
import { shortCut } from "./cut-text.ts";
import type { Plan, PlanInput } from "./draft.ts";
import { dayName } from "./plan-words.ts";
import type { Cost } from "./shelf-choice.ts";

const hairUm = 70;

/** A share of a hair in words a person can picture. */
function hairs(um: number): string {
  const ratio = um / hairUm;
  if (ratio < 0.2) return "less than a fifth";
  const shares: readonly (readonly [number, string])[] = [
    [0.29, "a quarter"],
    [0.42, "a third"],
    [0.58, "half"],
    [0.71, "two thirds"],
    [0.88, "three quarters"],
    [1.25, "the whole"],
  ];
  return shares.find(([most]) => ratio < most)?.[1] ?? `${withDigits(ratio, 2)} times the thickness`;
}

/** What to mix, how long it takes and what it comes to: sentences first. */
export function PlanFigures(props: {
  readonly plan: Plan;
  readonly input: PlanInput;
  readonly cost: Cost | null;
}) {
  const lastCoat = () => props.plan.steps.findLast((step) => step.what === "coat")?.at ?? null;
  const rubOut = () => props.plan.steps.at(-1)?.at ?? null;
  const spare = () => props.plan.solutionToMixMl - props.plan.solutionUsedMl;
  return (
    <div class="stack">
      <h2>
        {words.pieces.mixThis(millilitres(props.plan.solutionToMixMl), shortCut(props.input.cutLbPerGal))}
      </h2>
      <p>
        <b>
          {words.pieces.weigh(
            grams(props.plan.resinG),
            millilitres(props.plan.solventMl),
            grams(props.plan.solventG),
          )}
        </b>
      </p>
      <p class="soft">
        {words.pieces.used(millilitres(props.plan.solutionUsedMl), millilitres(Math.max(spare(), 0)))}{" "}
        <Show when={props.cost} keyed>
          {(cost) => words.pieces.cost(`${cost.amount.toFixed(2)} ${cost.currency}`)}
        </Show>
      </p>
      <p>
        <b>{words.pieces.film(withDigits(props.plan.dryUm, 2), hairs(props.plan.dryUm))}</b>{" "}
        <span class="soft">{words.pieces.filmSays}</span>
      </p>
      <Show
        when={props.plan.unplacedSteps === 0}
        fallback={
          <div class="does-not-fit" role="alert">
            <h3>{words.pieces.tooFew(props.plan.unplacedSteps)}</h3>
            <p>{words.pieces.tooFewSays}</p>
          </div>
        }
      >
        <p>
          {words.pieces.evenings(props.plan.eveningsUsed, dayName(lastCoat()?.slice(0, 10) ?? ""))}{" "}
          <Show when={rubOut()} keyed>
            {(day) => words.pieces.rubFrom(dayName(day))}
          </Show>
        </p>
      </Show>
    </div>
  );
}
