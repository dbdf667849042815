import { For, Show } from "solid-js";
import type { NotebookInFile } from "../../core/notebook/notebook-in-file.ts";
import { zoneHere } from "../book-store/house.ts";
import { dayInWords } from "../words/time.ts";
import * as words from "../words/words.ts";

const t = words.photographs;
const shown = 20;

/** Photographs that a file speaks of and does not hold whole, each by its day and note. */
export function Lacking(props: { readonly lacking: NotebookInFile["lacking"] }) {
  return (
    <Show when={props.lacking.length > 0}>
      <p>{t.lacking(props.lacking.length)}</p>
      <ul class="small">
        <For each={props.lacking.slice(0, shown)}>
          {({ happened, note, spoiled }) => (
            <li>{t.lackingLine(dayInWords(happened, zoneHere()), note, spoiled)}</li>
          )}
        </For>
      </ul>
    </Show>
  );
}
