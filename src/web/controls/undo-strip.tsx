import type { JSX } from "solid-js";
import * as words from "../words/words.ts";
import "./controls.css";

/** What was just written, and its undo in the very place of the act. It stays until the next act. */
export function UndoStrip(props: { readonly says: JSX.Element; readonly onUndo: () => void }) {
  return (
    <div class="wrote" role="status">
      <span>{props.says}</span>
      <button type="button" onClick={() => props.onUndo()}>
        {words.controls.undo}
      </button>
    </div>
  );
}
