import { For } from "solid-js";
import * as words from "../words/words.ts";

/** Keeps the field, and with it the number pad, while a key beside it is pressed. */
const stay = (event: PointerEvent) => event.preventDefault();

/** Units to press with a thumb beside a number pad, and the way to the letters, for “1 1/2 cup” and the like. */
export function UnitPad(props: {
  readonly units: readonly string[];
  readonly typed: string;
  /** Pressed before there was a number. */
  readonly waiting: string | undefined;
  readonly onUnit: (unit: string) => void;
  readonly letters: boolean;
  readonly onLetters: () => void;
}) {
  const isOn = (unit: string) => props.waiting === unit || props.typed.trim().endsWith(` ${unit}`);
  return (
    <fieldset class="units not-on-paper">
      <legend class="unseen">{words.controls.unit}</legend>
      <For each={props.units}>
        {(unit) => (
          <button
            type="button"
            aria-pressed={isOn(unit)}
            onPointerDown={stay}
            onClick={() => props.onUnit(unit)}
          >
            {unit}
          </button>
        )}
      </For>
      <button
        type="button"
        aria-pressed={props.letters}
        onPointerDown={stay}
        onClick={() => props.onLetters()}
      >
        {words.controls.letters}
      </button>
    </fieldset>
  );
}
