import { For, Match, Switch } from "solid-js";
import { finishColour } from "../../core/colour/finish-colour.ts";
import { hexFromSrgb } from "../../core/colour/srgb.ts";
import { metre } from "../../core/units.ts";
import type { MaterialView } from "../../core/views/material.ts";
import { finishOfRecipe } from "../look/finish-of-recipe.ts";

/** How much of it is left of what there was; a thing whose amount was never written is drawn whole. */
function shareLeft({ left, used, usedUp }: MaterialView): number {
  if (usedUp) return 0;
  const [now, taken] = [left?.kg ?? left?.m3, left?.kg == null ? used.m3 : used.kg];
  return now == null || taken === null || now + taken <= 0 ? 1 : Math.max(0, now / (now + taken));
}

const heap = [
  "M4 62L10 48 24 52 20 62Z",
  "M32 62L36 50 50 54 46 62Z",
  "M18 62L22 46 34 48 34 62Z",
  "M12 50L20 38 30 44 26 51Z",
  "M28 47L34 36 44 42 40 50Z",
  "M20 40L26 28 36 34 33 42Z",
];
const bottle = "M20 3H36V14Q48 17 48 26V61H8V26Q8 17 20 14Z";
const can = "M8 12Q28 6 48 12V58Q28 64 8 58ZM8 12Q28 18 48 12";
const cake = "M6 40L28 32 50 40V54L28 62 6 54ZM6 40L28 48 50 40M28 48V62";
const sheet = "M10 10H42Q46 10 46 16V56Q46 60 42 60H10ZM16 18H38M16 28H38M16 38H38";

/** A heap of flakes in their colour, a bottle with its level, a can, a cake, a sheet: what the thing is. */
export function MaterialDrawing(props: { readonly material: MaterialView }) {
  const share = () => shareLeft(props.material);
  const flake = () => {
    const finish = finishOfRecipe(props.material.resin?.grade, 3);
    return finish === undefined ? "var(--sheet)" : hexFromSrgb(finishColour(finish, metre(0.1)));
  };
  const is = (...forms: readonly MaterialView["form"][]) => forms.includes(props.material.form);
  const flakes = () =>
    heap.slice(0, Math.max(props.material.usedUp ? 0 : 1, Math.ceil(share() * heap.length)));
  return (
    <svg width="56" height="64" viewBox="0 0 56 64" aria-hidden="true">
      <Switch fallback={<path class="pen" d={cake} />}>
        <Match when={is("resin")}>
          <For each={flakes()}>{(path) => <path d={path} fill={flake()} class="flake-line" />}</For>
        </Match>
        <Match when={is("solvent", "oil", "dye")}>
          <rect x="8" y={60 - 38 * share()} width="40" height={38 * share()} class="liquid-line" />
          <path class="pen" d={bottle} />
        </Match>
        <Match when={is("product", "pigment")}>
          <path class="pen" d={can} />
        </Match>
        <Match when={is("abrasive")}>
          <path class="pen" d={sheet} />
        </Match>
      </Switch>
    </svg>
  );
}
