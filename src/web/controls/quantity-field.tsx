import { createSignal, createUniqueId, For, type JSX, Show } from "solid-js";
import * as words from "../words/words.ts";
import { Wrong } from "./choice.tsx";
import type { QuantityReading } from "./quantity-reading.ts";
import { withUnit } from "./read-quantity.ts";
import { UnitPad } from "./unit-pad.tsx";
import "./controls.css";

/**
 * An amount as a person types it, `57 g`, `8 fl oz`, `1 1/2 cup`. The typed text is the page's and never changed by
 * the field; `reading` is what it comes to (`readMass(text)` and its like). What is wrong is said once the person has
 * left the field, or at once when `told`.
 */
export function QuantityField(props: {
  readonly label: JSX.Element;
  readonly typed: string;
  readonly reading: QuantityReading;
  readonly onInput: (typed: string) => void;
  readonly hint?: JSX.Element;
  /** Say what is wrong now: the act was pressed. */
  readonly told?: boolean;
  /** Nothing typed is fine. */
  readonly optional?: boolean;
  readonly onEnter?: () => void;
}) {
  const id = createUniqueId();
  let field!: HTMLInputElement;
  const [left, setLeft] = createSignal(false);
  const [used, setUsed] = createSignal(false);
  const [letters, setLetters] = createSignal(false);
  /** A unit that was pressed before the number: it is put behind it once that is typed. */
  const [waiting, setWaiting] = createSignal<string>();
  const empty = () => props.typed.trim() === "";
  const problem = () => {
    const { reading } = props;
    if (reading.ok || (empty() && (props.optional || !props.told))) return undefined;
    return reading.problem;
  };
  const shows = () => (props.told || left() || problem()?.ask ? problem() : undefined);
  const pressUnit = (unit: string) => {
    const typed = withUnit(props.typed, unit);
    setWaiting(typed === props.typed ? unit : undefined);
    props.onInput(typed);
  };
  /** The number is typed: the unit that was pressed before goes behind one that has none. */
  const settle = () => {
    const unit = waiting();
    if (unit === undefined || !/\d\s*$/.test(props.typed)) return;
    setWaiting(undefined);
    props.onInput(withUnit(props.typed, unit));
  };
  const turnLetters = () => {
    setLetters(!letters());
    field.blur(); // a keyboard that is open changes only when the field is entered anew
    field.focus();
  };
  return (
    <div class="field" classList={{ used: used() }}>
      <label for={id}>
        {props.label}
        <Show when={props.optional}> ({words.controls.optional})</Show>
      </label>
      <input
        ref={field}
        id={id}
        type="text"
        inputMode={props.reading.units === undefined || letters() ? "text" : "decimal"}
        autocomplete="off"
        autocapitalize="off"
        spellcheck={false}
        value={props.typed}
        aria-invalid={shows() !== undefined}
        aria-describedby={`${id}-understood ${id}-wrong`}
        onInput={(event) => props.onInput(event.currentTarget.value)}
        onFocus={() => setUsed(true)}
        onBlur={() => {
          settle();
          setLeft(true);
        }}
        onKeyDown={(event) => {
          if (event.key !== "Enter") return;
          settle();
          props.onEnter?.();
        }}
      />
      <Show when={(props.reading.units?.length ?? 0) > 0}>
        <UnitPad
          units={props.reading.units ?? []}
          typed={props.typed}
          waiting={waiting()}
          onUnit={pressUnit}
          letters={letters()}
          onLetters={turnLetters}
        />
      </Show>
      <Show when={props.reading.ok ? props.reading.understood : props.hint} keyed>
        {(said) => (
          <span class="hint understood" id={`${id}-understood`}>
            {said}
          </span>
        )}
      </Show>
      <Wrong id={`${id}-wrong`} says={shows()?.says} />
      <Show when={(shows()?.meanings.length ?? 0) > 0}>
        <div class="side-by-side">
          <For each={shows()?.meanings}>
            {(meaning) => (
              <button type="button" onClick={() => props.onInput(meaning.typed)}>
                {meaning.label}
              </button>
            )}
          </For>
        </div>
      </Show>
    </div>
  );
}
