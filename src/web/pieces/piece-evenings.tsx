import { createSignal, Show } from "solid-js";
import type { ScheduleStep } from "../../core/notebook/kinds/pieces.ts";
import type { CoatsOn } from "../../core/views/coats-on.ts";
import { useBook } from "../book-store/use-book.tsx";
import { dayInWords } from "../words/time.ts";
import * as words from "../words/words.ts";
import { CarryOn, type Changed, Sooner } from "./carry-on.tsx";
import type { CarryingOn } from "./carrying-on.ts";
import { EveningStrip } from "./evening-strip.tsx";
import { PlanTable } from "./plan-table.tsx";
import { dayName } from "./plan-words.ts";

/** What was just done to the plan: it outlives the page's parts, which a new plan makes anew. */
export function createChanging() {
  const [moving, setMoving] = createSignal<string>();
  const [changed, setChanged] = createSignal<Changed>();
  return {
    moving,
    move: (day: string) => setMoving((was) => (was === day ? undefined : day)),
    changed,
    change: (what: Changed | undefined) => {
      setMoving(undefined);
      setChanged(what);
    },
  };
}

/** The evenings of a kept plan to scale and step by step, and what moves them. */
export function PieceEvenings(props: {
  readonly steps: readonly ScheduleStep[];
  readonly on: CoatsOn;
  readonly going: CarryingOn;
  readonly changing: ReturnType<typeof createChanging>;
}) {
  const book = useBook();
  return (
    <section class="hung stack piece-strip">
      <EveningStrip
        steps={props.steps}
        isDone={props.going.isDone}
        now={props.going.wall()}
        act={(day) => (
          <Show when={props.going.canReplan()}>
            <button
              type="button"
              class="words"
              aria-label={words.evenings.moveThis(dayName(day))}
              aria-expanded={props.changing.moving() === day}
              onClick={() => props.changing.move(day)}
            >
              {words.evenings.move}
            </button>
          </Show>
        )}
      />
      <CarryOn
        of={props.going}
        moving={props.changing.moving()}
        changed={props.changing.changed()}
        onChange={props.changing.change}
      />
      <Sooner of={props.going} onChange={props.changing.change} />
      <PlanTable
        steps={props.steps}
        doneOf={(coat) => {
          const done = props.on.of(coat);
          return done && words.pieces.done(dayInWords(done.at, book.zone));
        }}
      />
    </section>
  );
}
