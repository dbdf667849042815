import { createUniqueId, For, type JSX } from "solid-js";
import type { ChoiceOption } from "./choice.tsx";
import { Wrong } from "./choice.tsx";
import "./controls.css";

/** One of many. `empty` is the line that stands while nothing is chosen. */
export function Select<T extends string>(props: {
  readonly label: JSX.Element;
  readonly options: readonly (Omit<ChoiceOption<T>, "label" | "says"> & { readonly label: string })[];
  readonly value: T | undefined;
  readonly onChange: (value: T) => void;
  readonly empty?: string;
  readonly onEmpty?: () => void;
  readonly wrong?: string | undefined;
}) {
  const id = createUniqueId();
  const chosen = (at: number) => {
    const option = props.options[at - (props.empty === undefined ? 0 : 1)];
    if (option !== undefined) props.onChange(option.value);
    else props.onEmpty?.();
  };
  return (
    <div class="field">
      <label for={id}>{props.label}</label>
      <select
        id={id}
        aria-invalid={props.wrong !== undefined}
        aria-describedby={`${id}-wrong`}
        onChange={(event) => chosen(event.currentTarget.selectedIndex)}
      >
        {props.empty === undefined ? null : (
          <option value="" selected={props.value === undefined}>
            {props.empty}
          </option>
        )}
        <For each={props.options}>
          {(option) => (
            <option value={option.value} selected={props.value === option.value}>
              {option.label}
            </option>
          )}
        </For>
      </select>
      <Wrong id={`${id}-wrong`} says={props.wrong} />
    </div>
  );
}
