import { createMemo, For, Show } from "solid-js";
import { materialView } from "../../core/views/material.ts";
import type { LotTaken, ShoppingLine } from "../../core/views/shopping-list.ts";
import { useBook } from "../book-store/use-book.tsx";
import { now } from "../shell/now.ts";
import { dayOf } from "../words/time.ts";
import * as words from "../words/words.ts";
import { grams, millilitres } from "./amount-text.ts";
import { lotsOf, type PlanMixed, planShopping } from "./plan-shopping.ts";

const t = words.shopping;
type Said = (amount: number) => string;
const inGrams: Said = (kg) => grams(kg * 1e3);
const inMl: Said = (m3) => millilitres(m3 * 1e6);

const parts = (line: ShoppingLine | null, said: Said): readonly string[] =>
  (line?.taken ?? []).map(({ amount, name, lot }: LotTaken) => t.part(said(amount), name, lot));

/** What is to be bought after what stands on the shelf, with what it costs. */
export function Shopping(props: PlanMixed) {
  const book = useBook();
  const list = createMemo(() => planShopping(book.whole(), props, dayOf(now(), book.zone)));
  const lines = () => [list().flakes, list().alcohol].filter((line) => line !== null);
  const toBuy = () =>
    [
      [list().flakes, (kg: number) => t.flakes(inGrams(kg))] as const,
      [list().alcohol, (m3: number) => t.alcohol(inMl(m3))] as const,
    ].flatMap(([line, said]) => (line === null || line.toBuy <= 0 ? [] : [said(line.toBuy)]));
  const cost = () => {
    const bought = lines().filter((line) => line.toBuy > 0);
    if (bought.some((line) => line.cost === null)) return t.noPrice;
    const sums = new Map<string, number>();
    for (const { cost: paid } of bought)
      if (paid !== null) sums.set(paid.currency, (sums.get(paid.currency) ?? 0) + paid.amount);
    return t.cost([...sums].map(([currency, sum]) => `${sum.toFixed(2)} ${currency}`).join(" + "));
  };
  const taken = () => [...parts(list().flakes, inGrams), ...parts(list().alcohol, inMl)];
  const old = () => (list().flakes?.taken ?? []).filter((lot) => lot.old).map((lot) => lot.name);
  const unknown = () =>
    lines()
      .flatMap((line) => line.unknown)
      .map((id) => materialView(book.whole(), id)?.name ?? id);
  return (
    <Show when={lines().length > 0}>
      <section class="stack">
        <h3>{t.heading}</h3>
        <Show when={toBuy().length > 0} fallback={<p>{t.nothing}</p>}>
          <ul>
            <For each={toBuy()}>
              {(one) => (
                <li>
                  <b>{one}</b>
                </li>
              )}
            </For>
          </ul>
          <p>{cost()}</p>
        </Show>
        <Show when={taken().length > 0}>
          <p class="soft">{t.taken(taken().join("; "))}</p>
        </Show>
        <Show when={lotsOf(list().flakes).length > 1}>
          <p>{t.blend}</p>
        </Show>
        <Show when={old().length > 0}>
          <p>{t.old(old().join(", "))}</p>
        </Show>
        <Show when={unknown().length > 0}>
          <p>{t.unknown(unknown().join(", "))}</p>
        </Show>
      </section>
    </Show>
  );
}
