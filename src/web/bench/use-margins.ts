import { type Accessor, createMemo } from "solid-js";
import type { DryingSetup } from "../../core/evaporation/drying.ts";
import { jarSetups, type NoModelReason, type ShopAir } from "../../core/views/coat-setup.ts";
import { type JarView, jarIds, jarView } from "../../core/views/jar.ts";
import { useBook } from "../book-store/use-book.tsx";
import { useOwn, whitensBelow } from "../drying/use-own.ts";
import { useReckoned } from "../drying/use-reckoned.ts";
import { type JarMargin, worstFirst } from "./blush-state.ts";
import type { Bench } from "./use-bench.ts";

interface JarCoat {
  readonly jar: JarView;
  readonly setup: DryingSetup | null;
  readonly why: NoModelReason | null;
}

/** The margins of every jar in the shop's air, live, and of the jar that the bench is about. */
export function useMargins(bench: Bench, air: Accessor<ShopAir | null>) {
  const book = useBook();
  const own = useOwn();
  /** Every jar that there is still something in, with its coat in this air. */
  const all = createMemo((): readonly JarCoat[] => {
    const now = air();
    if (!bench.drawn()) return [];
    return book.look("jars", jarIds).flatMap((id) => {
      const jar = book.look(`jar:${id}`, (read) => jarView(read, id));
      if (jar === null || jar.emptied !== null || now === null) return [];
      const { setups, why } = jarSetups(book.whole(), id, bench.methodNow(), now);
      return [{ jar, setup: setups?.[0] ?? null, why }];
    });
  });
  const coats = createMemo(() => all().filter(({ setup }) => setup !== null));
  const asked = createMemo(() => {
    const setups = coats().flatMap(({ setup }) => setup ?? []);
    return setups.length === 0 ? undefined : { setups, threshold: whitensBelow(own()) };
  });
  const reckoning = useReckoned("margins", asked);
  const ordered = createMemo((): readonly JarMargin[] => {
    const last = reckoning.last();
    if (last === undefined || last.answer.length !== coats().length) return [];
    return worstFirst(
      coats().map(({ jar }, i) => ({ id: jar.id, code: jar.code, blush: last.answer[i] ?? null })),
    );
  });
  /** The jar of the coat in question, else the one that is nearest to turning white. */
  const shown = createMemo(
    (): JarMargin | undefined => ordered().find(({ id }) => id === bench.jar()?.id) ?? ordered()[0],
  );
  const coatShown = () => coats().find(({ jar }) => jar.id === shown()?.id);
  return {
    ...{ all, ordered, shown, reckoning },
    /** Why there is no margin at all. */
    why: () => all()[0]?.why ?? null,
    jarShown: () => coatShown()?.jar,
    setupShown: () => coatShown()?.setup ?? undefined,
    ofTheCoat: () => shown()?.id === bench.jar()?.id,
    threshold: () => whitensBelow(own()),
  };
}
export type Margins = ReturnType<typeof useMargins>;
