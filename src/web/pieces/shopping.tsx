import { createMemo, For, Show } from "solid-js";
import { materialView } from "../../core/views/material.ts";
import { type LotTaken, type ShoppingLine, shoppingList } from "../../core/views/shopping-list.ts";
import { useBook } from "../book-store/use-book.tsx";
import { now } from "../shell/now.ts";
import { dayOf } from "../words/time.ts";
import * as words from "../words/words.ts";
import { grams, millilitres } from "./amount-text.ts";
import type { Plan } from "./draft.ts";

interface ShoppingProps {
  readonly plan: Plan;
  readonly resin: string | undefined;
  readonly solvent: string | undefined;
}

const t = words.shopping;
type Said = (amount: number) => string;
const inGrams: Said = (kg) => grams(kg * 1e3);
const inMl: Said = (m3) => millilitres(m3 * 1e6);

/** More than one lot of the flakes goes into the plan. */
export const manyLots = (flakes: ShoppingLine | null): boolean =>
  flakes !== null && flakes.taken.length + (flakes.toBuy > 0 ? 1 : 0) > 1;

const parts = (line: ShoppingLine | null, said: Said): readonly string[] =>
  (line?.taken ?? []).map(({ amount, name, lot }: LotTaken) => t.part(said(amount), name, lot));

/** What is to be bought after what stands on the shelf, with what it costs. */
export function Shopping(props: ShoppingProps) {
  const book = useBook();
  const list = createMemo(() =>
    shoppingList(
      book.whole(),
      {
        resin: props.resin ?? null,
        solvent: props.solvent ?? null,
        resinKg: props.plan.resinG / 1e3,
        solventM3: props.plan.solventMl / 1e6,
      },
      dayOf(now(), book.zone),
    ),
  );
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
        <Show when={manyLots(list().flakes)}>
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
