import { type Accessor, createMemo, createSignal, Show } from "solid-js";
import type { Body } from "../../core/notebook/kinds/all.ts";
import { poundsPerUsGallonFromCut } from "../../core/units.ts";
import { type JarView, jarIds, jarView } from "../../core/views/jar.ts";
import type { PieceView } from "../../core/views/piece.ts";
import { useBook } from "../book-store/use-book.tsx";
import { Select } from "../controls/select.tsx";
import * as words from "../words/words.ts";
import { coatSteps } from "./kept-plan.ts";

/** Two cuts are the same on a label when they are no further apart. */
const sameCutLb = 0.05;

/** Which jar the next coat of a piece comes from: the one that was chosen, else the last coat's, else the only one of its cut. */
export function usePieceJar(piece: Accessor<PieceView>, coat: Accessor<number | undefined>) {
  const book = useBook();
  const [picked, setPicked] = createSignal<string | null>();
  const jars = createMemo((): readonly JarView[] =>
    book.look("jars", jarIds).flatMap((id) => {
      const jar = book.look(`jar:${id}`, (read) => jarView(read, id));
      return jar === null || jar.emptied !== null ? [] : [jar];
    }),
  );
  const cutOf = (n: number | undefined) => {
    const { schedule } = piece();
    return coatSteps(schedule, { coat: n ?? 0 })[0]?.cutLbPerGal ?? schedule?.recipe.cutLbPerGal;
  };
  const ofTheCut = () => {
    const asked = cutOf(coat()) ?? Number.NaN;
    const fits = jars().filter(({ labelCut, stage }) => {
      const label = labelCut === null ? Number.NaN : poundsPerUsGallonFromCut(labelCut);
      return stage === "thinned" && Math.abs(label - asked) <= sameCutLb;
    });
    return fits.length === 1 ? fits[0]?.id : undefined;
  };
  const last = () => {
    const from = piece().layers.flatMap((entry) => (entry.body as Body<"layer-applied">).from);
    const batch = from.at(-1)?.batch;
    const n = coat();
    if (n !== undefined && n > 1 && cutOf(n) !== cutOf(n - 1)) return undefined; // another cut is another jar
    return jars().some(({ id }) => id === batch) ? batch : undefined;
  };
  const jar = (): string | undefined => {
    const chosen = picked();
    return chosen === null ? undefined : (chosen ?? last() ?? ofTheCut());
  };
  return { jars, jar, pick: setPicked };
}

export function PieceJar(props: { readonly from: ReturnType<typeof usePieceJar> }) {
  return (
    <Show when={props.from.jars().length > 0}>
      <Select
        label={words.bench.outsideFrom}
        empty={words.bench.outsideFromNone}
        value={props.from.jar()}
        options={props.from.jars().map(({ id, code }) => ({ value: id, label: code }))}
        onChange={(id) => props.from.pick(id)}
        onEmpty={() => props.from.pick(null)}
      />
    </Show>
  );
}
