import { type JSX, Show } from "solid-js";
import "./controls.css";

/** A clash of a plan: what does not go, why, the nearest that does, and a button that does it. */
export function WhyNot(props: {
  readonly heading: JSX.Element;
  readonly says: JSX.Element;
  readonly act: JSX.Element;
  /** Nothing where there is nothing to press. */
  readonly button: string | undefined;
  readonly onPress: () => void;
}) {
  return (
    <section class="why-not not-on-paper">
      <h2>{props.heading}</h2>
      <p>
        {props.says} <b>{props.act}</b>
      </p>
      <Show when={props.button}>
        <button type="button" onClick={() => props.onPress()}>
          {props.button}
        </button>
      </Show>
    </section>
  );
}
