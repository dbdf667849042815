import { For, Show } from "solid-js";
import type { ScheduleStep } from "../../core/notebook/kinds/pieces.ts";
import { counted } from "../words/counted.ts";
import { withDigits } from "../words/number.ts";
import { lengthInWords } from "../words/time.ts";
import * as words from "../words/words.ts";
import { grams, millilitres } from "./amount-text.ts";
import { shortCut } from "./cut-text.ts";
import type { Plan } from "./draft.ts";
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

type Mix = Plan["mixes"][number];

const weighed = (mix: Mix): string =>
  words.pieces.weigh(grams(mix.resinG), millilitres(mix.solventMl), grams(mix.solventG));

/** The jar to mix, or one a cut, in the order in which they are needed. */
function Mixes(props: { readonly plan: Plan }) {
  const one = () => (props.plan.mixes.length === 1 ? props.plan.mixes[0] : undefined);
  return (
    <Show
      when={one()}
      fallback={
        <>
          <h2>{words.finishing.jars(counted(props.plan.mixes.length))}</h2>
          <ul class="plain stack">
            <For each={props.plan.mixes}>
              {(mix) => (
                <li>
                  <b>{words.finishing.jar(millilitres(mix.solutionMl), shortCut(mix.cutLbPerGal))}</b>:{" "}
                  {weighed(mix)}
                </li>
              )}
            </For>
          </ul>
        </>
      }
    >
      {(mix) => (
        <>
          <h2>{words.pieces.mixThis(millilitres(mix().solutionMl), shortCut(mix().cutLbPerGal))}</h2>
          <p>
            <b>{weighed(mix())}</b>
          </p>
        </>
      )}
    </Show>
  );
}

/** What to mix, how long it takes and what it comes to: sentences first. */
export function PlanFigures(props: {
  readonly plan: Plan;
  /** As they are kept: with what is behind us. */
  readonly steps: readonly ScheduleStep[];
  readonly cost: Cost | null;
}) {
  const lastCoat = () =>
    props.steps
      .flatMap(({ what, day }) => (what === "coat" && day !== undefined ? [day] : []))
      .sort()
      .at(-1) ?? "";
  const evenings = () =>
    new Set(props.steps.flatMap((step) => (step.at === undefined ? [] : [step.day]))).size;
  const cured = () => {
    const at = props.plan.steps.findIndex((step) => step.what === "cure");
    const [cure, next] = [props.plan.steps[at], props.plan.steps[at + 1]];
    if (cure === undefined || next?.at == null) return null;
    return words.pieces.rubFrom(dayName(next.at), lengthInWords(cure.leastWaitMinutes));
  };
  const spare = () => props.plan.solutionToMixMl - props.plan.solutionUsedMl;
  return (
    <div class="stack">
      <Mixes plan={props.plan} />
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
          {words.pieces.evenings(evenings(), dayName(lastCoat()))} {cured()}
        </p>
      </Show>
    </div>
  );
}
