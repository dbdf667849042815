import { For } from "solid-js";
import { finishColour } from "../../../core/colour/finish-colour.ts";
import { hexFromSrgb } from "../../../core/colour/srgb.ts";
import { finishOfRecipe } from "../../look/finish-of-recipe.ts";
import { withDigits } from "../../words/number.ts";
import { words } from "../../words/words.ts";
import type { Meant } from "./mix-plan.ts";
import type { MixDraft } from "./use-mix.ts";

const barPx = 120;

/** The word is the same, the jar is not: both ounces side by side, with the cut that each gives. */
export function WhichOunce(props: {
  readonly mix: MixDraft;
  readonly typed: string;
  readonly meant: readonly Meant[];
}) {
  const t = words.jars.mix.ounce;
  const most = () => Math.max(...props.meant.map((one) => one.mixed.solventMl));
  const fill = (one: Meant) => {
    const finish = finishOfRecipe(props.mix.resin.material()?.resin?.grade, one.mixed.cutLbPerGal);
    return finish === undefined ? "var(--sheet)" : hexFromSrgb(finishColour(finish));
  };
  return (
    <section class="hung which-ounce">
      <h2>{t.heading(props.typed)}</h2>
      <p>{t.says}</p>
      <div class="two-ounces">
        <For each={props.meant}>
          {(one) => (
            <button type="button" onClick={() => props.mix.put("alcohol", one.typed)}>
              <b>{t.by[one.by]}</b>
              <span>{t.means(one.typed)}</span>
              <span class="say">{words.jars.lb(withDigits(one.mixed.cutLbPerGal, 2))}</span>
              <span>{`${Math.round(one.mixed.solventMl)} mL`}</span>
              <svg width={barPx} height="20" viewBox={`0 0 ${barPx} 20`} aria-hidden="true">
                <rect
                  x="1"
                  y="3"
                  width={(barPx - 2) * (one.mixed.solventMl / most())}
                  height="14"
                  class="pen"
                  style={{ fill: fill(one) }}
                />
              </svg>
              <span class="pick">{t.pick[one.by]}</span>
            </button>
          )}
        </For>
      </div>
    </section>
  );
}
