import { createMemo, Show } from "solid-js";
import { pouredTogether } from "../../core/solution/composition.ts";
import { kilogram } from "../../core/units.ts";
import { airView } from "../../core/views/air.ts";
import { jarView } from "../../core/views/jar.ts";
import { useBook } from "../book-store/use-book.tsx";
import { Cautions } from "../controls/cautions.tsx";
import type { Bench } from "./use-bench.ts";

/** What is in the air of the shop while this coat goes on: of the jar where it is known, else of every jar of the trial. */
export function BenchCaution(props: { readonly bench: Bench }) {
  const book = useBook();
  const air = book.view("air", airView);
  const liquid = createMemo(() => {
    const coat = props.bench.shown();
    const batches = coat?.jar?.batch
      ? [coat.jar.batch]
      : (props.bench.trials().find((t) => t.id === coat?.trial)?.jars ?? []).flatMap((j) => j.batch ?? []);
    const compositions = batches.flatMap((id) => {
      const jar = book.look(`jar:${id}`, (read) => jarView(read, id));
      return jar === null || Object.keys(jar.cautioned).length === 0 ? [] : [jar.cautioned];
    });
    if (compositions.length === 0) return undefined;
    return pouredTogether(compositions.map((composition) => ({ mass: kilogram(1), composition })))
      .composition;
  });
  const airC = () => {
    const read = air();
    return read === null ? undefined : read.temperature - 273.15;
  };
  return (
    <Show when={liquid()}>
      {(composition) => <Cautions act="coating indoors" liquid={composition()} airC={airC()} />}
    </Show>
  );
}
