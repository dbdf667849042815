import { createSignal, createUniqueId, For, type JSX, Show } from "solid-js";
import * as words from "../words/words.ts";
import { Wrong } from "./choice.tsx";
import type { QuantityReading } from "./quantity-reading.ts";
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
  const [left, setLeft] = createSignal(false);
  const empty = () => props.typed.trim() === "";
  const problem = () => {
    const { reading } = props;
    if (reading.ok || (empty() && (props.optional || !props.told))) return undefined;
    return reading.problem;
  };
  const shows = () => (props.told || left() || problem()?.ask ? problem() : undefined);
  return (
    <div class="field">
      <label for={id}>
        {props.label}
        <Show when={props.optional}> ({words.controls.optional})</Show>
      </label>
      <input
        id={id}
        type="text"
        autocomplete="off"
        autocapitalize="off"
        spellcheck={false}
        value={props.typed}
        aria-invalid={shows() !== undefined}
        aria-describedby={`${id}-understood ${id}-wrong`}
        onInput={(event) => props.onInput(event.currentTarget.value)}
        onBlur={() => setLeft(true)}
        onKeyDown={(event) => event.key === "Enter" && props.onEnter?.()}
      />
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
