import { Show } from "solid-js";
import type { CoatsOn } from "../../core/views/coats-on.ts";
import type { PieceView } from "../../core/views/piece.ts";
import { useBook } from "../book-store/use-book.tsx";
import { Caution } from "../controls/caution.tsx";
import * as words from "../words/words.ts";
import type { CarryingOn } from "./carrying-on.ts";
import { CoatIsOn } from "./coat-is-on.tsx";
import { Delivery } from "./delivery.tsx";
import { costOfSchedule, mixedWith, type planOfSchedule, waxOfSchedule } from "./kept-plan.ts";
import { LayerNotes } from "./layer-notes.tsx";
import { PlanFigures } from "./plan-figures.tsx";
import { liesOf } from "./prefill.ts";
import type { PuttingOn } from "./putting-on.ts";
import { Shopping } from "./shopping.tsx";
import { TakeToCalendar } from "./take-to-calendar.tsx";
import { Tonight } from "./tonight.tsx";

/** Beside the evenings: what is done tonight, the coat that is on, what to mix, and where to go from here. */
export function PieceMix(props: {
  readonly piece: PieceView;
  readonly schedule: NonNullable<PieceView["schedule"]>;
  readonly worked: ReturnType<typeof planOfSchedule>;
  readonly on: CoatsOn;
  readonly going: CarryingOn;
  readonly putting: PuttingOn;
}) {
  const book = useBook();
  const plan = () => props.worked?.plan;
  const cost = () => {
    const found = plan();
    return found === undefined ? null : costOfSchedule(book.whole(), props.schedule, found);
  };
  return (
    <section class="hung stack piece-mix">
      <Tonight of={props.going} />
      <Caution says={words.pieces.air}>
        {words.pieces.rags} {words.pieces.estimate}
      </Caution>
      <CoatIsOn of={props.putting} />
      <Show when={plan()} keyed>
        {(found) => <PlanFigures plan={found} steps={props.schedule.steps} cost={cost()} />}
      </Show>
      <Show when={props.on.logged.length === 0 && props.worked} keyed>
        {(found) => (
          <>
            <Delivery input={found.input} wanted={props.piece.wanted} />
            <Shopping
              plan={found.plan}
              resin={mixedWith(props.schedule).resin}
              solvent={mixedWith(props.schedule).solvent}
            />
          </>
        )}
      </Show>
      <LayerNotes
        lies={liesOf(props.piece)}
        wax={waxOfSchedule(book.whole(), props.schedule)}
        dryUm={plan()?.dryUm ?? null}
      />
      <p class="side-by-side">
        <a class="press" href={`/pieces/${props.piece.id}/paper`}>
          {words.pieces.printIt}
        </a>
        <a class="press" href={`/pieces/${props.piece.id}/plan`}>
          {words.pieces.change}
        </a>
        <a class="press" href={`/pieces/new?repeat=${props.piece.id}`}>
          {words.pieces.again}
        </a>
      </p>
      <TakeToCalendar piece={props.piece} schedule={props.schedule} />
      <p class="soft small">{words.pieces.usual}</p>
    </section>
  );
}
