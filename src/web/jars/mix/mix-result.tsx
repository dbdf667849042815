import { For, Show } from "solid-js";
import { finishColour } from "../../../core/colour/finish-colour.ts";
import { hexFromSrgb } from "../../../core/colour/srgb.ts";
import { JarPicture } from "../../drawings/jar.tsx";
import { finishOfBags } from "../../look/finish-of-recipe.ts";
import { known } from "../../words/number.ts";
import * as words from "../../words/words.ts";
import { giveOrTake } from "../jar-text.ts";
import { isWeight } from "../shop-units.ts";
import { mixFields } from "./mix-fields.ts";
import type { Mixed } from "./mix-plan.ts";
import type { MixDraft } from "./use-mix.ts";
import { bagPours, bottlePours } from "./write-mix.ts";

const ml = (value: number): string => `${Math.round(value)} mL`;
/** A glass whose size is not told is drawn as one that this fills to here. */
const usualFilling = 0.85;
/** Nearer to the brim than this the glass's own size would be written over the level. */
const roomToName = 0.86;

/** The jar as it will be: the dashed line is what is poured, the solid one what it becomes. In dashes until it is known. */
export function MixPicture(props: { readonly mix: MixDraft; readonly mixed: Mixed | undefined }) {
  const capacity = () =>
    (props.mix.vessel.capacity() ?? (props.mixed?.solutionMl ?? 1) / usualFilling / 1e6) * 1e6;
  const fill = () => {
    const finish = finishOfBags(props.mix.bags(), props.mixed?.cutLbPerGal);
    return finish === undefined ? undefined : hexFromSrgb(finishColour(finish));
  };
  const marks = () => {
    const own = props.mix.vessel.capacity();
    if (props.mixed === undefined) return [];
    const { solutionMl, solventMl } = props.mixed;
    return [
      { share: solutionMl / capacity(), says: String(Math.round(solutionMl)), strong: true },
      { share: solventMl / capacity(), says: String(Math.round(solventMl)) },
      ...(own === undefined || solutionMl / capacity() > roomToName
        ? []
        : [{ share: 1, says: String(Math.round(own * 1e6)) }]),
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
              {source === "jugMl" && weighed() !== sure().by ? t.weighInstead(weighed()) : "."}
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
              : t.full(ml(vessel.mostSolutionMl))}
          </p>
        )}
      </Show>
    </>
  );
}

/** What to pour and weigh of each, where there are several. */
export function Pours(props: { readonly mix: MixDraft; readonly mixed: Mixed }) {
  const t = words.jars.mix;
  const pours = () => {
    const of = props.mix.ingredients();
    if (of?.bags === undefined || of.bags.length + of.bottles.length < 3) return [];
    const bags = bagPours({ ...of, bags: of.bags }, props.mixed, props.mix.given());
    return [...bags, ...bottlePours(of, props.mixed, props.mix.given(), props.mix.alcoholBy())];
  };
  return (
    <Show when={pours().length > 0}>
      <ul class="plain pours" aria-label={t.poursLabel}>
        <For each={pours()}>
          {({ material, amount, grams }) => (
            <li>
              <b>{amount.typed.replace("ml", "mL")}</b>
              <span>
                {material.name}
                <Show when={!isWeight(amount)}>
                  <span class="soft"> {t.orOnScale(grams.typed)}</span>
                </Show>
              </span>
            </li>
          )}
        </For>
      </ul>
    </Show>
  );
}

/** Why nothing is worked out yet, and what would do. */
export function NotMixed(props: { readonly mix: MixDraft }) {
  const t = words.jars.mix;
  /** What is missing: flakes and alcohol, a share of one of them, or an amount beside the one that was given. */
  const notYet = () => {
    const of = props.mix.ingredients();
    if (props.mix.resins.shares().kind === "open" || props.mix.solvents.shares().kind === "open")
      return t.shareOpen;
    if (of === undefined) return t.notYet;
    const given = mixFields.find((field) => props.mix.given()[field] !== undefined);
    return given === undefined ? t.notYet : t.oneMore[given];
  };
  return (
    <Show
      when={props.mix.tooMany().length > 0}
      fallback={
        <p class={props.mix.refused() === undefined ? "soft" : "wrong"}>
          {props.mix.refused()?.message ?? notYet()}
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
