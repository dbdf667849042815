import { Show } from "solid-js";
import { airView } from "../../core/views/air.ts";
import { useBook } from "../book-store/use-book.tsx";
import { Cautions } from "../controls/cautions.tsx";
import type { Bench } from "./use-bench.ts";
import { useLiquid } from "./use-liquid.ts";

/** What is in the air of the shop while this coat goes on: of the jar where it is known, else of every jar of the trial. */
export function BenchCaution(props: { readonly bench: Bench }) {
  const book = useBook();
  const air = book.view("air", airView);
  const liquid = useLiquid(props.bench);
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
