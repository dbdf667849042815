import { batch, For, Show } from "solid-js";
import { finishColour } from "../../../core/colour/finish-colour.ts";
import { hexFromSrgb } from "../../../core/colour/srgb.ts";
import { finishOfBags } from "../../look/finish-of-recipe.ts";
import { withDigits } from "../../words/number.ts";
import * as words from "../../words/words.ts";
import type { Meant, Trap } from "./traps.ts";
import type { MixDraft } from "./use-mix.ts";

const barPx = 120;

/** The words are the same, the jar is not: what was typed in each of its meanings side by side, with the cut that each gives. */
export function TwoMeanings(props: { readonly mix: MixDraft; readonly trap: Trap }) {
  const t = words.jars.mix.trap;
  const most = () => Math.max(...props.trap.meant.map((one) => one.solventMl ?? 0));
  const fill = (one: Meant) => {
    const finish = finishOfBags(props.mix.bags(), one.cutLbPerGal);
    return finish === undefined ? "var(--sheet)" : hexFromSrgb(finishColour(finish));
  };
  const sameCut = () => {
    const cuts = props.trap.meant.map((one) => withDigits(one.cutLbPerGal, 2));
    return new Set(cuts).size === 1;
  };
  /** Parts say a cut, wherever they were typed. */
  const pick = (one: Meant) =>
    batch(() => {
      if (props.trap.kind === "parts" && props.trap.field !== "cut") props.mix.put(props.trap.field, "");
      if (props.trap.kind === "parts" && /part/i.test(props.mix.typed().alcohol))
        props.mix.put("alcohol", "");
      props.mix.put(props.trap.kind === "parts" ? "cut" : props.trap.field, one.typed);
    });
  const heading = (one: Meant) => (one.by === "parts" ? t.parts[one.says] : t.by[one.by]);
  return (
    <section class="hung which-ounce">
      <h2>{t.heading[props.trap.kind](props.trap.typed)}</h2>
      <p>{t.says[props.trap.kind]}</p>
      <div class="two-ounces" classList={{ three: props.trap.meant.length > 2 }}>
        <For each={props.trap.meant}>
          {(one) => (
            <button type="button" onClick={() => pick(one)}>
              <Show when={props.trap.kind === "ounce" || props.trap.kind === "parts"}>
                <b>{heading(one)}</b>
              </Show>
              <Show when={props.trap.kind !== "parts"}>
                <span>{props.trap.kind === "ounce" ? one.typed : one.says}</span>
              </Show>
              <span class="say">{words.jars.lb(withDigits(one.cutLbPerGal, 2))}</span>
              <Show when={one.solventMl} keyed>
                {(ml) => (
                  <>
                    <span>{`${Math.round(ml)} mL`}</span>
                    <svg width={barPx} height="20" viewBox={`0 0 ${barPx} 20`} aria-hidden="true">
                      <rect
                        x="1"
                        y="3"
                        width={(barPx - 2) * (ml / most())}
                        height="14"
                        class="pen"
                        style={{ fill: fill(one) }}
                      />
                    </svg>
                  </>
                )}
              </Show>
              <Show when={sameCut() && one.ifOtherLbPerGal} keyed>
                {(other) => <span>{t.ifOther(withDigits(other, 2))}</span>}
              </Show>
              <span class="pick">{t.pick[props.trap.kind](one.by)}</span>
            </button>
          )}
        </For>
      </div>
    </section>
  );
}
