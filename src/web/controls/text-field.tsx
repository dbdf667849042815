import { createUniqueId, type JSX, Show } from "solid-js";
import { Wrong } from "./choice.tsx";
import "./controls.css";

/** A line (or several) of words. */
export function TextField(props: {
  readonly label: JSX.Element;
  readonly value: string;
  readonly onInput: (text: string) => void;
  readonly hint?: JSX.Element;
  readonly wrong?: string | undefined;
  readonly lines?: boolean;
  readonly type?: "text" | "date" | "time" | "search" | "password";
  readonly inputMode?: "text" | "decimal" | "numeric" | "search";
  readonly onEnter?: () => void;
}) {
  const id = createUniqueId();
  const shared = {
    get value() {
      return props.value;
    },
    id,
    autocomplete: "off",
    get "aria-invalid"() {
      return props.wrong !== undefined;
    },
    "aria-describedby": `${id}-hint ${id}-wrong`,
    onInput: (event: InputEvent & { currentTarget: HTMLInputElement | HTMLTextAreaElement }) =>
      props.onInput(event.currentTarget.value),
  } as const;
  return (
    <div class="field">
      <label for={id}>{props.label}</label>
      <Show
        when={props.lines}
        fallback={
          <input
            {...shared}
            type={props.type ?? "text"}
            inputMode={props.inputMode}
            onKeyDown={(event) => event.key === "Enter" && props.onEnter?.()}
          />
        }
      >
        <textarea {...shared} />
      </Show>
      <Show when={props.hint}>
        <span class="hint" id={`${id}-hint`}>
          {props.hint}
        </span>
      </Show>
      <Wrong id={`${id}-wrong`} says={props.wrong} />
    </div>
  );
}
