import { Show } from "solid-js";
import { usuallyTakesMore } from "../../../core/area/total.ts";
import type { PieceView } from "../../../core/views/piece.ts";
import * as words from "../../words/words.ts";
import { draftsFromKept } from "./kept-parts.ts";
import { PartsDrawing } from "./parts-drawing.tsx";
import { partsFigures } from "./parts-total.ts";

/** What the area of a piece in the book was worked out from; nothing where it was told. */
export function CountedParts(props: { readonly piece: PieceView }) {
  const figures = () =>
    partsFigures(
      draftsFromKept(props.piece.parts),
      props.piece.endGrainTimes ?? usuallyTakesMore.endGrainTimes,
    );
  return (
    <Show when={props.piece.parts.length > 0}>
      <details>
        <summary>{words.parts.counted}</summary>
        <PartsDrawing parts={figures().parts} unit={figures().unit} />
        <p class="soft small">{words.parts.drawingNote}</p>
      </details>
    </Show>
  );
}
