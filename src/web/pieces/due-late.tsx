import { createMemo, createSignal, onCleanup, onMount, Show } from "solid-js";
import type { ScheduleStep } from "../../core/notebook/kinds/pieces.ts";
import { beginEarlier } from "../../core/pieces/begin-earlier.ts";
import { clock } from "../../core/pieces/bench-time.ts";
import { coatNumbers } from "../../core/pieces/planned-evenings.ts";
import { movedWindow } from "../../core/pieces/shop-windows.ts";
import { shopClock } from "../../core/schedule/shop-clock.ts";
import { useBook } from "../book-store/use-book.tsx";
import { WhyNot } from "../controls/why-not.tsx";
import * as words from "../words/words.ts";
import type { Changed } from "./carry-on.tsx";
import type { CarryingOn } from "./carrying-on.ts";
import { dayName, stepName } from "./plan-words.ts";

/** It is planned anew some dozen times: not before the page stands. */
const afterMs = 300;

/** What comes due after an evening has ended, and from when that evening would have to begin; at a press it does. */
export function DueLate(props: { readonly of: CarryingOn; readonly onChange: (changed: Changed) => void }) {
  const book = useBook();
  const [stands, setStands] = createSignal(false);
  onMount(() => {
    const timer = setTimeout(() => setStands(true), afterMs);
    onCleanup(() => clearTimeout(timer));
  });
  /** To the quarter of an hour: the advice stands still while it is read. */
  const now = createMemo(() => {
    const { day, minute } = props.of.wall();
    return `${day}T${clock(Math.min(1440, Math.ceil(minute / 15) * 15))}`;
  });
  /** What is still to be done, and when. */
  const ahead = (steps: readonly ScheduleStep[]) => {
    const left = steps.filter((step) => step.at !== undefined).slice(-leftToDo());
    return JSON.stringify(left.map(({ what, day, at }) => [what, day, at]));
  };
  const leftToDo = () =>
    props.of.steps().filter((step) => step.at !== undefined && !props.of.isDone(step)).length;
  const found = createMemo(() => {
    if (!stands() || leftToDo() === 0) return null;
    const on = (windows: ReturnType<CarryingOn["windows"]>) => {
      const anew = props.of.inOrder(windows);
      return anew?.ok === true ? anew.value.steps : null;
    };
    const today = on(props.of.windows());
    // while the plan is not what it would be now, advice about its evenings would be about others than are shown
    if (today === null || ahead(today) !== ahead(props.of.steps())) return null;
    const due = beginEarlier({ steps: today, on }, props.of.windows(), now(), shopClock(book.zone));
    const [coat] = due?.coats ?? [];
    return due === null || coat === undefined ? null : { ...due, number: coatNumbers(today).get(coat) };
  });
  return (
    <Show when={found()} keyed>
      {(due) => {
        const [day, at, until] = [due.from.slice(0, 10), due.from.slice(11), due.until.slice(11)];
        const [coat] = due.coats;
        const name = coat === undefined ? "" : stepName(coat, due.number);
        const begin = () => {
          const to = [due.from, due.until] as const;
          const anew = props.of.replanned(movedWindow(props.of.windows(), day, to));
          if (anew?.ok !== true) return;
          props.onChange({
            entry: props.of.keep(anew.value),
            says: words.evenings.beginsAt(dayName(day), at),
          });
        };
        return (
          <WhyNot
            heading={words.evenings.dueLate(name, Number(due.due.slice(11, 13)), due.due < due.until)}
            says={words.evenings.dueSays(due.due.slice(11), dayName(day), until)}
            act={words.evenings.dueBegin(at)}
            button={words.evenings.beginAt(at)}
            onPress={begin}
          />
        );
      }}
    </Show>
  );
}
