import { For, type JSX, Show } from "solid-js";
import { finishColour } from "../../core/colour/finish-colour.ts";
import { hexFromSrgb } from "../../core/colour/srgb.ts";
import { metre } from "../../core/units.ts";
import type { MaterialView } from "../../core/views/material.ts";
import { useBook } from "../book-store/use-book.tsx";
import { Cautions } from "../controls/cautions.tsx";
import { finishOfRecipe } from "../pieces/finish-of-recipe.ts";
import { now } from "../shell/now.ts";
import { dayOf } from "../words/time.ts";
import { words } from "../words/words.ts";
import { factsOf, resinWords, strengthWords } from "./material-text.ts";

const t = words.shelf;

/** What hides behind a front label is cautioned on the shelf already. */
const hidden = ["methanol", "acetone", "mek", "mibk", "unknown"] as const;

/** One thing that was bought: drawn, said, and what may be done with it. */
export function MaterialLine(props: { readonly material: MaterialView; readonly children: JSX.Element }) {
  const book = useBook();
  const risky = () => {
    const { composition } = props.material;
    return composition !== null && hidden.some((component) => (composition[component] ?? 0) > 0);
  };
  return (
    <li class="shelf-line" classList={{ gone: props.material.usedUp }}>
      <MaterialDrawing material={props.material} />
      <div class="stack-small">
        <h3>{props.material.name}</h3>
        <p class="soft">{factsOf(props.material, now(), dayOf(now(), book.zone))}</p>
        <Show when={strengthWords(props.material) ?? resinWords(props.material)} keyed>
          {(made) => <p class="small">{made}</p>}
        </Show>
        <Show when={props.material.strengthProblem}>
          <p class="wrong">{t.unreadable}</p>
        </Show>
        <Show when={risky() && !props.material.usedUp && props.material.composition} keyed>
          {(composition) => <Cautions act="opening" liquid={composition} />}
        </Show>
      </div>
      <div class="shelf-acts">{props.children}</div>
    </li>
  );
}

/** A heap of flakes in their colour, or a bottle with its level. */
function MaterialDrawing(props: { readonly material: MaterialView }) {
  const share = () => {
    const { left, used, usedUp } = props.material;
    const [now, taken] = [left?.kg ?? left?.m3, left?.kg == null ? used.m3 : used.kg];
    if (usedUp) return 0;
    return now == null || taken === null || now + taken <= 0 ? 1 : Math.max(0, now / (now + taken));
  };
  const flake = () => {
    const finish = finishOfRecipe(props.material.resin?.grade, 3);
    return finish === undefined ? "var(--sheet)" : hexFromSrgb(finishColour(finish, metre(0.1)));
  };
  return (
    <svg width="56" height="64" viewBox="0 0 56 64" aria-hidden="true">
      <Show
        when={props.material.form === "solvent"}
        fallback={
          <For
            each={heap.slice(0, Math.max(props.material.usedUp ? 0 : 1, Math.ceil(share() * heap.length)))}
          >
            {(path) => <path d={path} fill={flake()} class="flake-line" />}
          </For>
        }
      >
        <rect x="8" y={60 - 38 * share()} width="40" height={38 * share()} class="liquid-line" />
        <path class="pen" d="M20 3H36V14Q48 17 48 26V61H8V26Q8 17 20 14Z" />
      </Show>
    </svg>
  );
}

const heap = [
  "M4 62L10 48 24 52 20 62Z",
  "M32 62L36 50 50 54 46 62Z",
  "M18 62L22 46 34 48 34 62Z",
  "M12 50L20 38 30 44 26 51Z",
  "M28 47L34 36 44 42 40 50Z",
  "M20 40L26 28 36 34 33 42Z",
];
