import { createSignal, Index, Show } from "solid-js";
import { type PartKind, partKinds } from "../../../core/area/part.ts";
import { typicalPieces } from "../../../core/registry/typical-pieces.ts";
import { Select } from "../../controls/select.tsx";
import { UndoStrip } from "../../controls/undo-strip.tsx";
import * as words from "../../words/words.ts";
import type { Planning } from "../planning.ts";
import { draftOf, emptyPart, type PartDraft } from "./part-draft.ts";
import { PartRow } from "./part-row.tsx";
import { partName } from "./part-words.ts";
import { PartsDrawing } from "./parts-drawing.tsx";
import { PartsTotal } from "./parts-total-view.tsx";
import "./parts.css";

/** A piece taken apart: parts are added, changed and taken out, and what they come to is the area. */
export function PartsEditor(props: { readonly planning: Planning }) {
  const { draft, parts, putParts } = props.planning;
  const [open, setOpen] = createSignal<number | null>(null);
  const [before, setBefore] = createSignal<{
    readonly says: string;
    readonly parts: readonly PartDraft[];
  } | null>(null);
  /** The parts of a piece done before come along without its area: they are what to look at first. */
  const begunOpen = draft().parts.length > 0 && draft().area === "";

  const change = (to: readonly PartDraft[]) => {
    setBefore(null);
    putParts(to);
  };
  const takeOut = (says: string, left: readonly PartDraft[]) => {
    const all = draft().parts;
    setOpen(null);
    putParts(left);
    setBefore({ says, parts: all });
  };
  const add = (kind: PartKind) => {
    change([...draft().parts, emptyPart(kind)]);
    setOpen(draft().parts.length - 1);
  };
  const begin = (piece: string) => {
    const typical = typicalPieces.find((one) => one.piece === piece);
    change((typical?.parts ?? []).map((part) => draftOf(part, words.parts.names[part.name])));
  };
  return (
    <details class="parts" open={begunOpen}>
      <summary>{words.parts.open}</summary>
      <div class="stack">
        <Show when={draft().parts.length === 0}>
          <Begin onChoose={begin} />
        </Show>
        <Show when={parts().total !== undefined}>
          <PartsDrawing parts={parts().parts} unit={parts().unit} />
          <p class="soft small">{words.parts.drawingNote}</p>
        </Show>
        <ul class="plain parts-list">
          <Index each={parts().parts}>
            {(part, i) => (
              <PartRow
                part={part()}
                unit={parts().unit}
                open={open() === i}
                onOpen={(now) => setOpen(now ? i : null)}
                onChange={(to) => change(draft().parts.map((one, at) => (at === i ? to : one)))}
                onTakeOut={() =>
                  takeOut(
                    words.parts.tookOut(partName(part().draft)),
                    draft().parts.filter((_, at) => at !== i),
                  )
                }
              />
            )}
          </Index>
        </ul>
        <Show when={before()} keyed>
          {(undo) => <UndoStrip says={undo.says} onUndo={() => change(undo.parts)} />}
        </Show>
        <AddPart onAdd={add} />
        <PartsTotal planning={props.planning} />
        <Show when={draft().parts.length > 1}>
          <button type="button" class="words" onClick={() => takeOut(words.parts.tookAllOut, [])}>
            {words.parts.beginAgain}
          </button>
        </Show>
      </div>
    </details>
  );
}

function Begin(props: { readonly onChoose: (piece: string) => void }) {
  return (
    <div class="field">
      <Select
        label={words.parts.begin}
        empty={words.parts.beginEmpty}
        value={undefined}
        options={typicalPieces.map(({ piece }) => ({ value: piece, label: words.parts.typical[piece] }))}
        onChange={props.onChoose}
      />
      <span class="hint">{words.parts.beginHint}</span>
    </div>
  );
}

function AddPart(props: { readonly onAdd: (kind: PartKind) => void }) {
  return (
    <fieldset class="choice">
      <legend>{words.parts.add}</legend>
      <div class="options">
        <Index each={partKinds}>
          {(kind) => (
            <button type="button" onClick={() => props.onAdd(kind())}>
              {words.parts.kinds[kind()]}
            </button>
          )}
        </Index>
      </div>
    </fieldset>
  );
}
