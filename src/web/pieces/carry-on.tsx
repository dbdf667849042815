import { createMemo, createSignal, Show } from "solid-js";
import { soonerIf } from "../../core/pieces/sooner.ts";
import { useBook } from "../book-store/use-book.tsx";
import { UndoStrip } from "../controls/undo-strip.tsx";
import * as words from "../words/words.ts";
import { type CarryingOn, endOf } from "./carrying-on.ts";
import { DueLate } from "./due-late.tsx";
import { MoveEvening } from "./move-evening.tsx";
import { dayName, stepName } from "./plan-words.ts";

/** What was just changed of the plan, with its undo. */
export interface Changed {
  readonly says: string;
  readonly entry: string;
}

/** A plan that real life has overtaken: said, planned anew at a press, undone in the same place. */
export function CarryOn(props: {
  readonly of: CarryingOn;
  readonly moving: string | undefined;
  readonly changed: Changed | undefined;
  readonly onChange: (changed: Changed | undefined) => void;
}) {
  const book = useBook();
  const carryOn = () => {
    const anew = props.of.replanned(props.of.windows());
    if (anew?.ok !== true) return;
    const [before, after] = [props.of.ends(), endOf(anew.value.steps)];
    const entry = props.of.keep(anew.value);
    const ends =
      after === null
        ? words.evenings.doesNotReach
        : words.evenings.ends(dayName(after), dayName(before ?? after));
    props.onChange({ entry, says: `${words.evenings.carriedOn} ${ends}` });
  };
  /** The rest, planned from now, would end on an earlier day. */
  const ahead = createMemo(() => {
    if (!props.of.canReplan() || props.of.behind() !== undefined) return undefined;
    const anew = props.of.replanned(props.of.windows());
    const [before, after] = [props.of.ends(), anew?.ok === true ? endOf(anew.value.steps) : null];
    return before === null || after === null || after >= before ? undefined : { before, after };
  });
  const undo = (entry: string) => {
    book.strike([entry]);
    props.onChange(undefined);
  };
  return (
    <>
      <Show when={props.changed} keyed>
        {(what) => <UndoStrip says={what.says} onUndo={() => undo(what.entry)} />}
      </Show>
      <Show when={props.of.canReplan() && props.of.behind()} keyed>
        {(step) => (
          <div class="does-not-fit" role="status">
            <h3>
              {words.evenings.behind(
                stepName(step, props.of.coats().get(step)),
                `${dayName(step.day ?? "")} ${step.at}`,
              )}
            </h3>
            <p>{words.evenings.behindSays}</p>
            <button type="button" onClick={carryOn}>
              {words.evenings.carryOn}
            </button>
          </div>
        )}
      </Show>
      <Show when={ahead()} keyed>
        {({ before, after }) => (
          <div class="does-not-fit" role="status">
            <h3>{words.evenings.ahead(dayName(after), dayName(before))}</h3>
            <button type="button" onClick={carryOn}>
              {words.evenings.carryOn}
            </button>
          </div>
        )}
      </Show>
      <Show when={props.moving} keyed>
        {(day) => (
          <MoveEvening
            of={props.of}
            day={day}
            onMoved={(entry) => props.onChange({ entry, says: words.evenings.moved(dayName(day)) })}
          />
        )}
      </Show>
    </>
  );
}

/** By how little longer the evenings would have to be; reckoned when somebody asks. */
export function Sooner(props: { readonly of: CarryingOn; readonly onChange: (changed: Changed) => void }) {
  const [open, setOpen] = createSignal(false);
  const says = () => {
    const found = soonerIf(props.of.windows(), (windows) => {
      const anew = props.of.inOrder(windows);
      return anew?.ok === true ? endOf(anew.value.steps) : null;
    });
    // a plan that was searched for may end before one in the usual order
    if (found === null || found.lastDay >= (props.of.ends() ?? "9999")) return words.evenings.noSooner;
    const tell = found.how === "begin earlier" ? words.evenings.soonerEarlier : words.evenings.soonerLater;
    return tell(found.minutes, dayName(found.lastDay));
  };
  return (
    <Show when={props.of.canReplan()}>
      <DueLate of={props.of} onChange={props.onChange} />
      <details onToggle={(event) => setOpen(event.currentTarget.open)}>
        <summary>{words.evenings.soonerHeading}</summary>
        <Show when={open()}>
          <p>{says()}</p>
        </Show>
      </details>
    </Show>
  );
}
