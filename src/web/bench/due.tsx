import { createSignal, For, Show } from "solid-js";
import type { DueCoat, DuePatch } from "../../core/views/bench.ts";
import { useBook } from "../book-store/use-book.tsx";
import { TextField } from "../controls/text-field.tsx";
import { now } from "../shell/now.ts";
import { woodFill } from "../trials/wood-fill.ts";
import { whenInWords } from "../words/time.ts";
import * as words from "../words/words.ts";
import { openWithWords } from "./held-keys.ts";
import { coatOf } from "./jar-words.ts";
import { SmallJar } from "./small-jar.tsx";
import { isReady } from "./state.ts";
import type { Bench } from "./use-bench.ts";

/** The coat in question: what, from which jar, on which patches. */
export function Due(props: { readonly bench: Bench; readonly coat: DueCoat }) {
  const book = useBook();
  const patches = () => (props.bench.written() === undefined ? props.bench.chosen() : props.coat.patches);
  const lead = () => {
    const written = props.bench.written();
    if (written !== undefined) return words.bench.written(whenInWords(written.at, book.zone, now()));
    if (props.coat.patches.some((p) => isReady(p, props.bench.nowMs()))) return words.bench.dueNow;
    return words.bench.dueAt(whenInWords(new Date(props.coat.dueMs ?? 0).toISOString(), book.zone, now()));
  };
  const rough = () =>
    props.coat.patches
      .filter((p) => p.lastIsRough)
      .map((p) => p.code)
      .join(" ");
  const of = () => coatOf(props.coat, props.bench.jar());
  return (
    <section class="due">
      <div class="what">
        <div>
          <b>{lead()}</b>
          <h1>{words.bench.coatOn(props.coat.coat, patches().length)}</h1>
          <p>{of()}</p>
          <p class="soft small less">
            {words.bench.coatOfTrial(props.coat.question, props.coat.coat, props.coat.coats)}
          </p>
        </div>
        <Show when={props.bench.jar()}>
          {(jar) => (
            <SmallJar code={jar().code} share={jar().volume.value / Math.max(jar().volumeAtFirst, 1e-9)} />
          )}
        </Show>
      </div>
      <Show when={props.coat.jar === null}>
        <WithoutKey bench={props.bench} coat={props.coat} />
      </Show>
      <Show when={props.bench.written() === undefined && rough() !== ""}>
        <p class="small">{words.bench.roughly(rough())}</p>
      </Show>
      <ul class="tiles" aria-label={words.bench.tapToLeaveOut}>
        <For each={props.coat.patches}>
          {(patch) => <Tile bench={props.bench} coat={props.coat} patch={patch} />}
        </For>
      </ul>
    </section>
  );
}

/** One patch: wood at the left end, coats as bars built up from below, the one being given open. */
function Tile(props: { readonly bench: Bench; readonly coat: DueCoat; readonly patch: DuePatch }) {
  const book = useBook();
  const written = () => props.bench.written() !== undefined;
  const isIn = () => written() || props.bench.chosen().some((p) => p.patch === props.patch.patch);
  const waits = () => !isReady(props.patch, props.bench.nowMs());
  const outSays = () =>
    waits()
      ? words.bench.from(whenInWords(new Date(props.patch.dueMs ?? 0).toISOString(), book.zone, now()))
      : words.bench.leftOut;
  return (
    <li classList={{ out: !isIn() }} style={{ "--wood": woodFill(props.patch.wood) }}>
      <button
        type="button"
        aria-pressed={isIn()}
        onClick={() => !written() && props.bench.tap(props.patch.patch)}
      >
        <b>
          {props.patch.code}
          <span class="unseen">{words.bench.tile(props.patch.wood, props.patch.coats)}</span>
        </b>
        <span class="in-or-out" />
        <Show when={isIn()} fallback={<span class="reason">{outSays()}</span>}>
          <span class="film" classList={{ thin: props.coat.coat > 4 }}>
            <span classList={{ open: !written() }} />
            <For each={Array.from({ length: props.patch.coats })}>{() => <span />}</For>
          </span>
        </Show>
      </button>
    </li>
  );
}

/** What to do without the key: coat by code, or open it with its words on this page alone. */
function WithoutKey(props: { readonly bench: Bench; readonly coat: DueCoat }) {
  const [typed, setTyped] = createSignal("");
  const [wrong, setWrong] = createSignal(false);
  const trial = () => props.bench.trials().find((t) => t.id === props.coat.trial);
  const byWords = () => trial()?.key.sealed?.derivation.name === "scrypt";
  const open = (event: Event) => {
    event.preventDefault();
    const of = trial();
    setWrong(of === undefined || !openWithWords(of, typed()));
  };
  return (
    <div class="no-key">
      <p>
        <b>{words.bench.byCode}.</b> {byWords() ? words.bench.byCodeSays : words.bench.keyElsewhere}
      </p>
      <Show when={byWords()}>
        <details>
          <summary>{words.bench.keyWords}</summary>
          <form class="stack" onSubmit={open}>
            <TextField
              label={words.bench.keyWords}
              type="password"
              value={typed()}
              onInput={setTyped}
              hint={words.bench.keyWordsHint}
              wrong={wrong() ? words.bench.keyWrong : undefined}
            />
            <button type="submit" class="wide">
              {words.bench.keyShow}
            </button>
          </form>
        </details>
      </Show>
    </div>
  );
}
