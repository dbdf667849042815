import { createUniqueId, For, type JSX, Show } from "solid-js";
import "./controls.css";

export interface ChoiceOption<T extends string> {
  readonly value: T;
  readonly label: JSX.Element;
  /** A second, quieter line. */
  readonly says?: JSX.Element;
}

/** One of a few, all in sight. Real radio buttons: arrow keys move, the label is the target. */
export function Choice<T extends string>(props: {
  readonly label: JSX.Element;
  readonly options: readonly ChoiceOption<T>[];
  readonly value: T | undefined;
  readonly onChange: (value: T) => void;
  readonly name?: string;
  /** Label and options in one line. */
  readonly inline?: boolean;
  readonly wrong?: string | undefined;
}) {
  const name = createUniqueId();
  const wrongId = createUniqueId();
  return (
    <fieldset
      class="choice"
      classList={{ inline: props.inline ?? false }}
      aria-describedby={props.wrong === undefined ? undefined : wrongId}
    >
      <legend>{props.label}</legend>
      <div class="options">
        <For each={props.options}>
          {(option) => (
            <label>
              <input
                type="radio"
                name={props.name ?? name}
                value={option.value}
                checked={props.value === option.value}
                onChange={() => props.onChange(option.value)}
              />
              <span>
                {option.label}
                <Show when={option.says}>
                  <span class="says">{option.says}</span>
                </Show>
              </span>
            </label>
          )}
        </For>
      </div>
      <Wrong id={wrongId} says={props.wrong} />
    </fieldset>
  );
}

/** The sentence beside a field that says what does not fit and what would do. */
export function Wrong(props: { readonly id: string; readonly says: string | undefined }) {
  return (
    <div class="field" aria-live="polite">
      <Show when={props.says !== undefined}>
        <p class="wrong" id={props.id}>
          {props.says}
        </p>
      </Show>
    </div>
  );
}
