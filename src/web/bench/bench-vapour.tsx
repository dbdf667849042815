import { Show } from "solid-js";
import { volumeSolids } from "../../core/film/film.ts";
import { solventOf } from "../vapour/state.ts";
import { VapourCard } from "../vapour/vapour-card.tsx";
import { words } from "../words/words.ts";
import type { Bench } from "./use-bench.ts";
import { useLiquid } from "./use-liquid.ts";

/** Where a plan says nothing of it: a patch of a board takes about so much. From memory. */
const usualMlAPatch = 2;
/** A sitting at one coat, from memory; typed over where it is otherwise. */
const usualMinutes = 60;

/** What this coat's alcohol comes to in the room, folded away below the caution. */
export function BenchVapour(props: { readonly bench: Bench }) {
  const liquid = useLiquid(props.bench);
  const trial = () => props.bench.trials().find(({ id }) => id === props.bench.shown()?.trial);
  const solventMl = () => {
    const each = trial()?.asked.millilitresPerPatchCoat ?? usualMlAPatch;
    const cut = props.bench.jar()?.cut?.value;
    const solvent = cut === undefined ? 1 : 1 - volumeSolids(cut);
    return Math.max(1, props.bench.chosen().length) * each * solvent;
  };
  return (
    <Show when={liquid()}>
      {(composition) => (
        <details class="not-on-paper">
          <summary>{words.vapour.title}</summary>
          <VapourCard
            work={{ solvent: solventOf(composition()), solventMl: solventMl(), minutes: usualMinutes }}
          />
        </details>
      )}
    </Show>
  );
}
