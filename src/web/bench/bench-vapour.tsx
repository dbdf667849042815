import { Show } from "solid-js";
import { volumeSolids } from "../../core/film/film.ts";
import { sittingVapour } from "../../core/views/sitting-vapour.ts";
import { useBook } from "../book-store/use-book.tsx";
import { now } from "../shell/now.ts";
import { solventOf } from "../vapour/state.ts";
import { VapourCard, type VapourWork } from "../vapour/vapour-card.tsx";
import * as words from "../words/words.ts";
import type { Bench } from "./use-bench.ts";
import { useLiquid } from "./use-liquid.ts";

/** Where a plan says nothing of it: a patch of a board takes about so much. From memory. */
const usualMlAPatch = 2;
/** A sitting at one coat, from memory; typed over where it is otherwise. */
const usualMinutes = 60;

/** What this coat's alcohol comes to in the room, folded away below the caution. */
export function BenchVapour(props: { readonly bench: Bench }) {
  const book = useBook();
  const liquid = useLiquid(props.bench);
  const trial = () => props.bench.trials().find(({ id }) => id === props.bench.shown()?.trial);
  /** Those that the coat went on a moment ago, or is about to. */
  const patches = () => props.bench.written()?.coat.patches.length ?? props.bench.chosen().length;
  const solventMl = () => {
    const each = trial()?.asked.millilitresPerPatchCoat ?? usualMlAPatch;
    const cut = props.bench.jar()?.cut?.value;
    const solvent = cut === undefined ? 1 : 1 - volumeSolids(cut);
    return Math.max(1, patches()) * each * solvent;
  };
  const sitting = book.view("sitting-vapour", sittingVapour);
  /** What the sitting has given so far, where one is under way and its coats are known; else what this coat will. */
  const work = (): VapourWork | undefined => {
    const so = sitting();
    if (so !== null && so.solvent !== null)
      return {
        solvent: solventOf(so.solvent.composition),
        solventMl: so.solvent.volume * 1e6,
        minutes: Math.max(1, (Date.parse(now()) - so.beganMs) / 60_000),
      };
    const composition = liquid();
    if (composition === undefined) return undefined;
    return { solvent: solventOf(composition), solventMl: solventMl(), minutes: usualMinutes };
  };
  return (
    <Show when={work()}>
      {(of) => (
        <details class="not-on-paper">
          <summary>{words.vapour.title}</summary>
          <VapourCard work={of()} />
        </details>
      )}
    </Show>
  );
}
