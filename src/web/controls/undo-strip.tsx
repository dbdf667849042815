import { type JSX, onMount } from "solid-js";
import * as words from "../words/words.ts";
import "./controls.css";

/** What was just written, and its undo in the very place of the act. It stays until the next act. */
export function UndoStrip(props: { readonly says: JSX.Element; readonly onUndo: () => void }) {
  let strip!: HTMLDivElement;
  // What was pressed may be gone by now: whoever goes by keyboard goes on from here, not from the top of the page.
  onMount(() =>
    setTimeout(() => {
      if (document.activeElement === document.body) strip.focus({ preventScroll: true });
    }),
  );
  return (
    <div ref={strip} class="wrote" role="status" tabindex="-1">
      <span>{props.says}</span>
      <button type="button" onClick={() => props.onUndo()}>
        {words.controls.undo}
      </button>
    </div>
  );
}
