import { createSignal, For, Show } from "solid-js";
import { leftOutReasons } from "../../core/notebook/kinds/trials.ts";
import type { Trial } from "../../core/views/trial.ts";
import type { PatchState } from "../../core/views/trial-patches.ts";
import { useBook } from "../book-store/use-book.tsx";
import { Choice } from "../controls/choice.tsx";
import { TextField } from "../controls/text-field.tsx";
import { UndoStrip } from "../controls/undo-strip.tsx";
import { boardPath } from "../film/board-path.ts";
import * as words from "../words/words.ts";

type Reason = (typeof leftOutReasons)[number];

/** One patch: where it lies, what it has had, and leaving it out with the reason. */
export function PatchPanel(props: { readonly trial: Trial; readonly patch: PatchState }) {
  const book = useBook();
  const [leaving, setLeaving] = createSignal(false);
  const [why, setWhy] = createSignal<Reason>("spoiled");
  const [note, setNote] = createSignal("");
  const [wrote, setWrote] = createSignal<{ readonly entry: string; readonly says: string }>();
  const keyOpen = () => props.trial.key.state === "open";
  const leaveOut = () => {
    const entry = book.write({
      kind: "patch-left-out",
      about: [props.trial.id],
      body: {
        patch: props.patch.patch,
        why: why(),
        ...(note().trim() === "" ? {} : { note: note().trim() }),
        keyOpen: keyOpen(),
      },
    });
    setLeaving(false);
    setNote("");
    setWrote({ entry, says: words.trials.wroteLeftOut(props.patch.code) });
  };
  const bringBack = () => {
    const entry = book.write({
      kind: "patch-brought-back",
      about: [props.trial.id],
      body: { patch: props.patch.patch, keyOpen: keyOpen() },
    });
    setWrote({ entry, says: words.trials.wroteBroughtBack(props.patch.code) });
  };
  const undo = () => {
    const last = wrote();
    if (last === undefined) return;
    book.strike([last.entry]);
    setWrote(undefined);
  };
  return (
    <section class="hung" aria-live="polite">
      <h2>{words.trials.patchHeading(props.patch.code)}</h2>
      <p>
        {words.trials.patchPlace(props.patch.board, props.patch.place)}.{" "}
        {words.trials.patchCoats(props.patch.coats)}.
      </p>
      <p>
        <a class="press" href={boardPath(props.trial.id, props.patch.board, props.patch.patch)}>
          {words.film.seeFilm}
        </a>
      </p>
      <Show when={props.patch.treatment} keyed>
        {(treatment) => (
          <p>
            <b>{words.trials.patchTreatment(Object.values(treatment), props.patch.jar ?? "")}</b>
          </p>
        )}
      </Show>
      <For each={props.patch.departures}>{(d) => <p>{words.trials.departures[d.what]}.</p>}</For>
      <Show when={props.patch.leftOut} keyed>
        {(out) => (
          <p>
            {words.trials.leftOutSaid(words.trials.why[out.why as Reason], out.keyOpen)} {out.note}
          </p>
        )}
      </Show>
      <Show
        when={wrote()}
        keyed
        fallback={
          <Show
            when={props.patch.leftOut === null}
            fallback={
              <button type="button" onClick={bringBack}>
                {words.trials.bringBack}
              </button>
            }
          >
            <Show
              when={leaving()}
              fallback={
                <button type="button" onClick={() => setLeaving(true)}>
                  {words.trials.leaveOut}
                </button>
              }
            >
              <Choice
                label={words.trials.leaveOutWhy}
                options={leftOutReasons.map((value) => ({ value, label: words.trials.why[value] }))}
                value={why()}
                onChange={setWhy}
              />
              <TextField label={words.trials.whyNote} value={note()} onInput={setNote} />
              <button type="button" onClick={leaveOut}>
                {words.trials.leaveOut}
              </button>
            </Show>
          </Show>
        }
      >
        {(done) => <UndoStrip says={done.says} onUndo={undo} />}
      </Show>
    </section>
  );
}
