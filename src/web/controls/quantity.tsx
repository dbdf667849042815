import { Show } from "solid-js";
import { known, withDigits } from "../words/number.ts";
import * as words from "../words/words.ts";
import "./controls.css";

/** A result: rounded to what is known, with its unit and its give or take in words. */
export function Quantity(props: {
  readonly value: number;
  readonly unit: string;
  /** Half the width of what the value may be; in the same unit. */
  readonly giveOrTake?: number | undefined;
  /** Significant figures when no give or take is known. */
  readonly digits?: number;
  readonly strong?: boolean;
}) {
  const said = () => {
    const by = props.giveOrTake;
    return by !== undefined && by > 0
      ? known(props.value, by)
      : { value: withDigits(props.value, props.digits ?? 3), by: undefined };
  };
  const value = () => `${said().value} ${props.unit}`;
  return (
    <span>
      <Show when={props.strong ?? true} fallback={<span class="quantity">{value()}</span>}>
        <b class="quantity">{value()}</b>
      </Show>
      <Show when={said().by} keyed>
        {(by) => words.controls.giveOrTakeBy(by)}
      </Show>
    </span>
  );
}
