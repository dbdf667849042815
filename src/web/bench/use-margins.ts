import { type Accessor, createMemo } from "solid-js";
import { type JarView, jarIds, jarView } from "../../core/views/jar.ts";
import { useBook } from "../book-store/use-book.tsx";
import { canBeReckoned, coatInput, type ShopAir } from "../drying/coat-input.ts";
import { useReckoned } from "../drying/use-reckoned.ts";
import { type JarMargin, worstFirst } from "./blush-state.ts";
import type { Bench } from "./use-bench.ts";

/** The margins of every jar in the shop's air, live, and the jar that the bench is about. */
export function useMargins(bench: Bench, air: Accessor<ShopAir | null>) {
  const book = useBook();
  const jars = createMemo((): readonly JarView[] =>
    book.look("jars", jarIds).flatMap((id) => {
      const jar = book.look(`jar:${id}`, (read) => jarView(read, id));
      return jar !== null && canBeReckoned(jar) ? [jar] : [];
    }),
  );
  const inputs = createMemo(() => {
    const now = air();
    if (now === null || jars().length === 0) return undefined;
    return jars().flatMap((jar) => coatInput(jar, now, bench.methodNow()) ?? []);
  });
  const reckoning = useReckoned("margins", inputs);
  const margins = createMemo((): readonly JarMargin[] => {
    const last = reckoning.last();
    if (last === undefined || last.answer.length !== jars().length) return [];
    return jars().map((jar, i) => ({ id: jar.id, code: jar.code, blush: last.answer[i] ?? null }));
  });
  const ordered = createMemo(() => worstFirst(margins()));
  /** The jar of the coat in question, else the one that is nearest to turning white. */
  const shown = createMemo((): JarMargin | undefined => {
    const asked = bench.jar()?.id;
    return margins().find((one) => one.id === asked) ?? ordered()[0];
  });
  const jarShown = (): JarView | undefined => jars().find((jar) => jar.id === shown()?.id);
  return { jars, ordered, shown, jarShown, reckoning, ofTheCoat: () => shown()?.id === bench.jar()?.id };
}
export type Margins = ReturnType<typeof useMargins>;
