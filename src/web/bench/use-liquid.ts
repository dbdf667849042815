import { type Accessor, createMemo } from "solid-js";
import { type Composition, pouredTogether } from "../../core/solution/composition.ts";
import { kilogram } from "../../core/units.ts";
import { jarView } from "../../core/views/jar.ts";
import { useBook } from "../book-store/use-book.tsx";
import type { Bench } from "./use-bench.ts";

/** What is in the air while this coat goes on: of the jar where it is known, else of every jar of the trial. */
export function useLiquid(bench: Bench): Accessor<Composition | undefined> {
  const book = useBook();
  return createMemo(() => {
    const coat = bench.shown();
    const batches = coat?.jar?.batch
      ? [coat.jar.batch]
      : (bench.trials().find((t) => t.id === coat?.trial)?.jars ?? []).flatMap((j) => j.batch ?? []);
    const compositions = batches.flatMap((id) => {
      const jar = book.look(`jar:${id}`, (read) => jarView(read, id));
      return jar === null || Object.keys(jar.cautioned).length === 0 ? [] : [jar.cautioned];
    });
    if (compositions.length === 0) return undefined;
    return pouredTogether(compositions.map((composition) => ({ mass: kilogram(1), composition })))
      .composition;
  });
}
