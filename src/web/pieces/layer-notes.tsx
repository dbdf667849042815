import { createMemo, For, Show } from "solid-js";
import { type LayerAdvice, type LayerOver, type LayerUnder, layerAdvice } from "../../core/pieces/layers.ts";
import { DoesNotFit } from "../controls/does-not-fit.tsx";
import { lengthInWords } from "../words/time.ts";
import * as words from "../words/words.ts";

export interface Lies {
  readonly under: LayerUnder;
  readonly over: LayerOver;
}

interface NotesProps {
  readonly lies: Lies;
  /** Of the flakes, by mass; null where it is not known. */
  readonly wax: number | null;
  readonly dryUm: number | null;
}

function inWords(advice: LayerAdvice, { under, over }: Lies): string {
  const { unders, overs, note } = words.layers;
  const layer = advice.side === "over" ? overs[over] : unders[under];
  return note(advice, layer, lengthInWords((advice.hours ?? 0) * 60));
}

/** What to do and to mind where the finish meets what lies under it and what goes over it. */
export function LayerNotes(props: NotesProps) {
  const advice = createMemo(() =>
    layerAdvice({
      ...props.lies,
      wax: props.wax,
      dryFilm: props.dryUm === null ? null : props.dryUm * 1e-6,
    }),
  );
  const saying = (stops: boolean) => advice().filter((one) => one.stops === stops);
  return (
    <section class="stack">
      <h2>{words.layers.heading}</h2>
      <For each={saying(true)}>
        {(one) => <DoesNotFit heading={words.layers.stops} says={inWords(one, props.lies)} />}
      </For>
      <ul>
        <For each={saying(false)}>{(one) => <li>{inWords(one, props.lies)}</li>}</For>
      </ul>
      <Show when={advice().length > 2}>
        <p class="soft small">{words.layers.source}</p>
      </Show>
    </section>
  );
}
