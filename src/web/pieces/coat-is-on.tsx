import { Show } from "solid-js";
import type { PlannedCoat } from "../../core/views/coats-on.ts";
import { Select } from "../controls/select.tsx";
import { UndoStrip } from "../controls/undo-strip.tsx";
import * as words from "../words/words.ts";
import { PieceJar } from "./piece-jar.tsx";
import { coatName } from "./plan-words.ts";
import type { PuttingOn } from "./putting-on.ts";
import { WentOnEarlier } from "./went-on-earlier.tsx";

const isOn = ({ coat, surface }: PlannedCoat): string =>
  surface === undefined ? words.pieces.isOn(coat) : words.surfaces.isOn(coat, surface);
const wroteSays = ({ coat, surface }: PlannedCoat): string =>
  surface === undefined ? words.pieces.wrote(coat) : words.surfaces.wrote(coat, surface);

/** One press for the coat that is next, on the side or part that is next; undone in the same place. */
export function CoatIsOn(props: { readonly of: PuttingOn }) {
  const { wrote, next, left, pick, putOn, undo } = props.of;
  return (
    <>
      <Show when={wrote()} keyed>
        {(last) => <UndoStrip says={wroteSays(last)} onUndo={() => undo(last)} />}
      </Show>
      <Show when={next()} fallback={<p>{words.pieces.allOn}</p>}>
        {(coat) => (
          <>
            <PieceJar from={props.of.from} />
            <Show when={left().length > 1}>
              <Select
                label={words.surfaces.which}
                value={coat().surface}
                options={left().flatMap(({ surface }) =>
                  surface === undefined ? [] : [{ value: surface, label: surface }],
                )}
                onChange={pick}
              />
            </Show>
            <button type="button" class="main" onClick={() => putOn(coat())}>
              {isOn(coat())}
            </button>
            <Show when={props.of.isWholeLeft()}>
              <button type="button" onClick={() => putOn({ coat: coat().coat })}>
                {words.surfaces.isOnAll(coat().coat)}
              </button>
            </Show>
            <Show when={coatName(coat().coat, coat().surface)} keyed>
              {(name) => (
                <WentOnEarlier
                  coat={name}
                  before={props.of.before(coat())}
                  onWrite={(when) => putOn(coat(), when)}
                />
              )}
            </Show>
          </>
        )}
      </Show>
    </>
  );
}
