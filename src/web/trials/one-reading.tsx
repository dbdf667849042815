import { createEffect, createMemo, createSignal, on, Show } from "solid-js";
import type { Trial } from "../../core/views/trial.ts";
import type { PatchState } from "../../core/views/trial-patches.ts";
import { useBook } from "../book-store/use-book.tsx";
import { Choice } from "../controls/choice.tsx";
import { TextField } from "../controls/text-field.tsx";
import * as words from "../words/words.ts";
import { Boards } from "./boards.tsx";
import { judgedBody, type Look, measuredBody, numberTyped, type Sitting } from "./judging-state.ts";
import { drawnTrial, geometryOf } from "./trial-state.ts";

/** One code to judge: where it lies, the scale, and the act; the last one written can be undone in the same place. */
export function OneReading(props: {
  readonly trial: Trial;
  readonly patch: PatchState;
  readonly sitting: Sitting;
  readonly at: number;
  readonly onNext: () => void;
  readonly onBack: () => void;
}) {
  const book = useBook();
  const [typed, setTyped] = createSignal("");
  const [level, setLevel] = createSignal<string>();
  const [wrong, setWrong] = createSignal<string>();
  const [last, setLast] = createSignal<{ readonly entry: string; readonly says: string }>();
  const look = () => props.trial.asked.looksAt.find((l) => l.name === props.sitting.response) as Look; // chosen from them
  const about = () => ({ trial: props.trial, patch: props.patch, sitting: props.sitting });
  let root!: HTMLDivElement;
  const which = createMemo(() => props.patch.patch);
  createEffect(
    on(which, () => {
      setTyped("");
      setLevel(undefined);
      setWrong(undefined);
      if (look().scale === "measured") root.querySelector("input")?.focus();
    }),
  );
  function written(entry: string, value: string): void {
    setLast({ entry, says: words.trials.judgeWrote(props.patch.code, value) });
    props.onNext();
  }
  function writeStep(): void {
    const one = level();
    if (one === undefined) setWrong(words.trials.chooseStep);
    else
      written(book.write({ kind: "judged", about: [props.trial.id], body: judgedBody(about(), one) }), one);
  }
  function writeNumber(): void {
    const value = numberTyped(typed());
    if (value === null) {
      setWrong(words.trials.notANumber(typed()));
      return;
    }
    const body = measuredBody(about(), look(), typed(), value);
    const entry = book.write({ kind: "measured", about: [props.trial.id], body });
    written(entry, `${typed().trim()} ${look().unit ?? ""}`.trim());
  }
  const write = () => (look().scale === "measured" ? writeNumber() : writeStep());
  function undo(): void {
    const was = last();
    if (was === undefined) return;
    book.strike([was.entry]);
    setLast(undefined);
    props.onBack();
  }
  return (
    <div ref={root} class="stack one-reading">
      <p class="soft">{words.trials.judgeOf(props.at + 1, props.sitting.order.length)}</p>
      <p class="say code-to-judge" aria-live="polite">
        {props.patch.code}
      </p>
      <p>{words.trials.patchPlace(props.patch.board, props.patch.place)}</p>
      <Boards
        boards={drawnTrial(props.trial, props.patch.patch)
          .filter((b) => b.patches.some((p) => p.here))
          .map((b) => ({ ...b, patches: b.patches.map((p) => ({ ...p, coats: 0, turn: null })) }))}
        geometry={geometryOf(props.trial)}
        label={words.trials.patchPlace(props.patch.board, props.patch.place)}
      />
      <Show
        when={look().scale === "measured"}
        fallback={
          <Choice
            label={words.trials.judgeValue(look().name, "")}
            options={(look().levels ?? []).map((value) => ({ value, label: value }))}
            value={level()}
            onChange={(to) => {
              setLevel(to);
              setWrong(undefined);
            }}
            wrong={wrong()}
          />
        }
      >
        <TextField
          label={words.trials.judgeValue(look().name, look().unit ?? "")}
          inputMode="decimal"
          value={typed()}
          onInput={setTyped}
          onEnter={write}
          wrong={wrong()}
        />
      </Show>
      <button type="button" class="main" onClick={write}>
        {words.trials.judgeNext}
      </button>
      <div class="after-act">
        <Show when={last()} fallback={<span />}>
          {(was) => (
            <button type="button" onClick={undo}>
              {was().says} {words.controls.undo}
            </button>
          )}
        </Show>
        <button type="button" class="words" onClick={() => props.onNext()}>
          {words.trials.judgeSkip}
        </button>
      </div>
    </div>
  );
}
