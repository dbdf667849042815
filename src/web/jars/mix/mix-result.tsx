import { For, Show } from "solid-js";
import { finishColour } from "../../../core/colour/finish-colour.ts";
import { hexFromSrgb } from "../../../core/colour/srgb.ts";
import { JarPicture } from "../../drawings/jar.tsx";
import { finishOfRecipe } from "../../look/finish-of-recipe.ts";
import { known } from "../../words/number.ts";
import { words } from "../../words/words.ts";
import { giveOrTake } from "../jar-text.ts";
import { type Mixed, worksOutMillilitres } from "./mix-plan.ts";
import type { MixDraft } from "./use-mix.ts";

const ml = (value: number): string => `${Math.round(value)} mL`;
/** A glass whose size is not told is drawn as one that this fills to here. */
const usualFilling = 0.85;

/** The jar as it will be: the dashed line is what is poured, the solid one what it becomes. In dashes until it is known. */
export function MixPicture(props: { readonly mix: MixDraft; readonly mixed: Mixed | undefined }) {
  const capacity = () =>
    (props.mix.vessel.capacity() ?? (props.mixed?.solutionMl ?? 1) / usualFilling / 1e6) * 1e6;
  const fill = () => {
    const finish = finishOfRecipe(props.mix.resin.material()?.resin?.grade, props.mixed?.cutLbPerGal);
    return finish === undefined ? undefined : hexFromSrgb(finishColour(finish));
  };
  const marks = () => {
    const own = props.mix.vessel.capacity();
    if (props.mixed === undefined) return [];
    const { solutionMl, solventMl } = props.mixed;
    return [
      { share: solutionMl / capacity(), says: String(Math.round(solutionMl)), strong: true },
      { share: solventMl / capacity(), says: String(Math.round(solventMl)) },
      ...(own === undefined ? [] : [{ share: 1, says: String(Math.round(own * 1e6)) }]),
    ];
  };
  return (
    <JarPicture
      width={104}
      jar={{
        share: Math.min(1, (props.mixed?.solutionMl ?? 0) / capacity()),
        poured: props.mixed === undefined ? undefined : Math.min(1, props.mixed.solventMl / capacity()),
        fill: fill(),
        empty: props.mixed === undefined,
      }}
      marks={marks()}
      label={
        props.mixed === undefined
          ? words.jars.mix.drawnEmpty
          : words.jars.mix.drawn(ml(props.mixed.solutionMl), ml(props.mixed.solventMl))
      }
    />
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
      <For each={props.mixed.flags}>{(flag) => <p class="soft small">{flag.message}</p>}</For>
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

/** Why nothing is worked out yet, and what would do. */
export function NotMixed(props: { readonly mix: MixDraft }) {
  const t = words.jars.mix;
  return (
    <Show
      when={props.mix.tooMany().length > 0}
      fallback={
        <p class={props.mix.refused() === undefined ? "soft" : "wrong"}>
          {props.mix.refused()?.message ?? t.notYet}
        </p>
      }
    >
      <div class="does-not-fit">
        <h3>{t.oneTooMany}</h3>
        <p>{t.oneTooManySays}</p>
        <div class="side-by-side">
          <For each={props.mix.tooMany()}>
            {(field) => (
              <button type="button" onClick={() => props.mix.put(field, "")}>
                {t.workOut[field]}
              </button>
            )}
          </For>
        </div>
      </div>
    </Show>
  );
}
