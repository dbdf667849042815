import { createMemo, Show } from "solid-js";
import type { PieceView } from "../../core/views/piece.ts";
import { useBook } from "../book-store/use-book.tsx";
import { now } from "../shell/now.ts";
import { dayOf } from "../words/time.ts";
import * as words from "../words/words.ts";
import { mixedWith, planOfSchedule } from "./kept-plan.ts";
import { lotsOf, planShopping } from "./plan-shopping.ts";

const t = words.sheet;
const and = (parts: readonly string[]): string => `${parts.slice(0, -1).join(", ")} and ${parts.at(-1)}`;

/** What goes with the piece: its lots blended, the sample that is kept of it, and how it is cared for. */
export function WithThePiece(props: { readonly piece: PieceView }) {
  const book = useBook();
  /** Of the shelf as it stands; once a coat is on, its jar was mixed, and the shelf no longer tells. */
  const lots = createMemo(() => {
    const { schedule, layers } = props.piece;
    const plan = planOfSchedule(schedule)?.plan;
    if (plan === undefined || layers.length > 0) return [];
    const { resin, solvent } = mixedWith(schedule);
    return lotsOf(planShopping(book.whole(), { plan, resin, solvent }, dayOf(now(), book.zone)).flakes);
  });
  const sample = () => props.piece.handedOver?.retainedSample;
  return (
    <section class="with-the-piece">
      <h2>{t.heading}</h2>
      <ul>
        <li>
          <Show when={lots().length > 1} fallback={<Blank says={t.blend} />}>
            {t.blendMany(and(lots()))}
          </Show>
        </li>
        <li>
          <Show when={sample()} keyed fallback={<Blank says={t.sample} />}>
            {(where) => t.sampleKept(where)}
          </Show>
        </li>
        <li>{props.piece.handedOver?.care ?? t.care}</li>
      </ul>
      <p class="small">{t.source}</p>
    </section>
  );
}

/** A line with room for a pencil at its end. */
const Blank = (props: { readonly says: string }) => (
  <>
    {props.says} <span class="blank-line" />
  </>
);
