import { type JSX, Show } from "solid-js";

/** Ink turned inside out, at the place of the act. What to do first, the figure and where it comes from below. */
export function Caution(props: { readonly says: JSX.Element; readonly children?: JSX.Element }) {
  return (
    <div class="caution" role="note">
      <b>{props.says}</b>
      <Show when={props.children}>
        <small>{props.children}</small>
      </Show>
    </div>
  );
}
