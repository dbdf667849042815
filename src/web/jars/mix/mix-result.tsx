import { Show } from "solid-js";
import { finishColour } from "../../../core/colour/finish-colour.ts";
import { hexFromSrgb } from "../../../core/colour/srgb.ts";
import { JarPicture } from "../../drawings/jar.tsx";
import { finishOfRecipe } from "../../pieces/finish-of-recipe.ts";
import { known } from "../../words/number.ts";
import { words } from "../../words/words.ts";
import { giveOrTake } from "../jar-text.ts";
import { type Mixed, worksOutGrams, worksOutMillilitres } from "./mix-plan.ts";
import type { MixDraft } from "./use-mix.ts";

const ml = (value: number): string => `${Math.round(value)} mL`;
const grams = (value: number): string => worksOutGrams(value).typed;
/** A glass whose size is not told is drawn as one that this fills to here. */
const usualFilling = 0.85;

/** The jar as it will be: the dashed line is what is poured, the solid one what it becomes. */
export function MixPicture(props: { readonly mix: MixDraft; readonly mixed: Mixed }) {
  const capacity = () => (props.mix.vessel.capacity() ?? props.mixed.solutionMl / usualFilling / 1e6) * 1e6;
  const fill = () => {
    const finish = finishOfRecipe(props.mix.resin.material()?.resin?.grade, props.mixed.cutLbPerGal);
    return finish === undefined ? undefined : hexFromSrgb(finishColour(finish));
  };
  return (
    <JarPicture
      width={132}
      jar={{
        share: Math.min(1, props.mixed.solutionMl / capacity()),
        poured: Math.min(1, props.mixed.solventMl / capacity()),
        fill: fill(),
      }}
      says={ml(props.mixed.solutionMl)}
      label={words.jars.mix.drawn(ml(props.mixed.solutionMl), ml(props.mixed.solventMl))}
    />
  );
}

/** The amounts that were not typed. */
export function WorkedOut(props: { readonly mix: MixDraft; readonly mixed: Mixed }) {
  const t = words.jars.mix;
  const given = () => props.mix.given();
  const missing = (field: "flakes" | "cut" | "alcohol" | "makes") => given()[field] === undefined;
  const alcohol = () =>
    props.mix.alcoholBy() === "jug" ? ml(props.mixed.solventMl) : grams(props.mixed.solventG);
  return (
    <dl class="facts worked-out">
      <Show when={missing("flakes")}>
        <dt>{t.workedOut.flakes}</dt>
        <dd>
          <b>{grams(props.mixed.resinG)}</b>
        </dd>
      </Show>
      <Show when={missing("cut")}>
        <dt>{t.workedOut.cut}</dt>
        <dd>
          <b>{words.jars.lb(known(props.mixed.cutLbPerGal, props.mixed.cutStandardUncertainty * 2).value)}</b>
        </dd>
      </Show>
      <dt>{t.workedOut.alcohol}</dt>
      <dd>
        <b>{alcohol()}</b>{" "}
        <span class="soft">
          {props.mix.alcoholBy() === "jug"
            ? t.orOnScale(grams(props.mixed.solventG))
            : t.orByJug(ml(props.mixed.solventMl))}
        </span>
      </dd>
      <dt>{t.workedOut.makes}</dt>
      <dd>
        <b>{ml(props.mixed.solutionMl)}</b>{" "}
        <span class="soft">{t.swells(ml(props.mixed.solutionMl - props.mixed.solventMl))}</span>
      </dd>
    </dl>
  );
}

/** How sure the cut is, what that rests on, and whether the glass holds it. */
export function HowSure(props: { readonly mix: MixDraft; readonly mixed: Mixed }) {
  const t = words.jars.mix;
  const byScale = () => props.mix.alcoholBy() === "scale";
  const uncertainty = () =>
    byScale() ? props.mixed.cutStandardUncertaintyIfWeighed : props.mixed.cutStandardUncertainty;
  const sure = () => known(props.mixed.cutLbPerGal, giveOrTake(uncertainty()));
  const weighed = () =>
    known(props.mixed.cutLbPerGal, giveOrTake(props.mixed.cutStandardUncertaintyIfWeighed)).by;
  const largest = () => (byScale() ? undefined : props.mixed.contributions[0]?.source);
  return (
    <>
      <p>
        <b>{t.sure(sure().value, sure().by)}</b>{" "}
        <Show when={largest()} keyed>
          {(source) => (
            <span class="soft">
              {t.mostOf(words.jars.source[source] ?? source)}
              {source === "jugMl" ? t.weighInstead(weighed()) : "."}
            </span>
          )}
        </Show>
      </p>
      <Show when={props.mixed.instrumentsAssumed}>
        <p class="soft small">{t.kitchen}</p>
      </Show>
      <Show when={props.mixed.vessel} keyed>
        {(vessel) => (
          <p classList={{ wrong: !vessel.fits, soft: vessel.fits }}>
            {vessel.fits
              ? t.fits(String(Math.round(vessel.solutionFraction * 100)))
              : t.full(worksOutMillilitres(vessel.mostSolutionMl).typed.replace("ml", "mL"))}
          </p>
        )}
      </Show>
    </>
  );
}
