import { type JSX, Show } from "solid-js";
import type { MaterialView } from "../../core/views/material.ts";
import { useBook } from "../book-store/use-book.tsx";
import { Cautions } from "../controls/cautions.tsx";
import { now } from "../shell/now.ts";
import { dayOf } from "../words/time.ts";
import * as words from "../words/words.ts";
import { MaterialDrawing } from "./material-drawing.tsx";
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
        <Show when={props.material.dataSheet} keyed>
          {(where) => <p class="small soft">{t.dataSheetAt(where)}</p>}
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
