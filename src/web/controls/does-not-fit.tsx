import { For, type JSX, Show } from "solid-js";
import * as words from "../words/words.ts";

/** Something wrong: what does not fit, the range, and the likeliest meaning as a button. */
export function DoesNotFit(props: {
  readonly heading: JSX.Element;
  readonly says?: JSX.Element;
  readonly meanings?: readonly { readonly label: string; readonly onPress: () => void }[];
}) {
  return (
    <div class="does-not-fit" role="alert">
      <h3>{props.heading}</h3>
      <Show when={props.says}>
        <p>{props.says}</p>
      </Show>
      <Show when={props.meanings !== undefined && props.meanings.length > 0}>
        <p>{words.controls.didYouMean}</p>
        <div class="side-by-side">
          <For each={props.meanings}>
            {(meaning) => (
              <button type="button" onClick={() => meaning.onPress()}>
                {meaning.label}
              </button>
            )}
          </For>
        </div>
      </Show>
    </div>
  );
}
