import { createSignal, For, Show } from "solid-js";
import { formatQuantity } from "../../../core/quantity/format-quantity.ts";
import { QuantityField } from "../../controls/quantity-field.tsx";
import { known } from "../../words/number.ts";
import * as words from "../../words/words.ts";
import { asGrams } from "../as-typed.ts";
import { giveOrTake } from "../jar-text.ts";
import { inOunces } from "../shop-units.ts";
import { type MixField, mixFields } from "./mix-fields.ts";
import type { Mixed } from "./mix-plan.ts";
import { MixPicture } from "./mix-result.tsx";
import type { MixDraft } from "./use-mix.ts";

const ml = (value: number): string => `${Math.round(value)} mL`;
const grams = (value: number): string => asGrams(value).typed;

/** What an amount that was not given comes to, and the same said another way. */
function workedOut(
  field: MixField,
  mixed: Mixed,
  by: "jug" | "scale",
  ounces: boolean,
): readonly [string, string] {
  const t = words.jars.mix;
  switch (field) {
    case "flakes":
      return [grams(mixed.resinG), t.inOunces(mixed.resinG / 28.349523125)];
    case "cut":
      return [
        words.jars.lb(known(mixed.cutLbPerGal, giveOrTake(mixed.cutStandardUncertainty)).value),
        t.perLitre(Math.round(mixed.gramsPerLitreSolvent)),
      ];
    case "alcohol":
      if (by === "jug" && ounces)
        return [
          ml(mixed.solventMl),
          t.orFluidOunces(
            formatQuantity(mixed.solventMl * 1e-6, "floz-us", { significantDigits: 3 }),
            grams(mixed.solventG),
          ),
        ];
      return by === "jug"
        ? [ml(mixed.solventMl), t.orOnScale(grams(mixed.solventG))]
        : [grams(mixed.solventG), t.orByJug(ml(mixed.solventMl))];
    case "makes":
      return [ml(mixed.solutionMl), t.swells(ml(mixed.solutionMl - mixed.solventMl))];
  }
}

/**
 * The four amounts of a mix. What you give stands in a field; what follows has no box, and a tap makes it yours to give.
 * Beside them the jar as it will be.
 */
export function MixAmounts(props: { readonly mix: MixDraft }) {
  const t = words.jars.mix;
  const [opened, setOpened] = createSignal<readonly MixField[]>([]);
  const isField = (field: MixField) =>
    props.mix.mixed() === undefined || props.mix.typed()[field].trim() !== "" || opened().includes(field);
  const ounces = () => inOunces(props.mix.given().flakes?.unit ?? "");
  return (
    <div class="mix-amounts">
      <div>
        <For each={mixFields.filter((field) => !props.mix.saidAbove(field))}>
          {(field) => (
            <Show
              when={isField(field) ? undefined : props.mix.mixed()}
              fallback={
                <QuantityField
                  label={t[field]}
                  typed={props.mix.typed()[field]}
                  reading={props.mix.readings()[field]}
                  hint={props.mix.mixed() === undefined ? t.hints[field] : undefined}
                  told={props.mix.told() && props.mix.typed()[field].trim() !== ""}
                  onInput={(text) => {
                    setOpened(opened().filter((one) => one !== field));
                    props.mix.put(field, text);
                  }}
                />
              }
            >
              {(mixed) => (
                <button type="button" class="follows" onClick={() => setOpened([...opened(), field])}>
                  <span class="name">{t[field]}</span>
                  <b>{workedOut(field, mixed(), props.mix.alcoholBy(), ounces())[0]}</b>
                  <span class="also">{workedOut(field, mixed(), props.mix.alcoholBy(), ounces())[1]}</span>
                  <span class="unseen">{t.giveInstead}</span>
                </button>
              )}
            </Show>
          )}
        </For>
      </div>
      <MixPicture mix={props.mix} mixed={props.mix.mixed()} />
    </div>
  );
}
