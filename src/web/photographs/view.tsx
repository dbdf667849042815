import { createMemo, createSignal, For, Show } from "solid-js";
import type { NotebookEntry } from "../../core/notebook/entry.ts";
import type { Body } from "../../core/notebook/kinds/all.ts";
import { useBook } from "../book-store/use-book.tsx";
import { UndoStrip } from "../controls/undo-strip.tsx";
import { now } from "../shell/now.ts";
import { happenedInWords } from "../words/time.ts";
import * as words from "../words/words.ts";
import { Picture } from "./picture.tsx";
import { TakeOne } from "./take-one.tsx";
import "./photographs.css";

const t = words.photographs;

/** The thing that is in the picture: a jar, a piece, or a board of a trial. */
export interface Pictured {
  readonly thing: string;
  readonly board?: string;
}

/** Photographs of a thing, small in a row and large when one is pressed, and the act of taking another. */
export function Photographs(props: Pictured) {
  return (
    <Show when={`${props.thing} ${props.board ?? ""}`} keyed>
      <Row thing={props.thing} {...(props.board === undefined ? {} : { board: props.board })} />
    </Show>
  );
}

const told = (one: NotebookEntry) => one.body as Body<"photograph">; // of that kind, and understood

function Row(props: Pictured) {
  const book = useBook();
  const [large, setLarge] = createSignal<string>();
  const [struck, setStruck] = createSignal<string>();
  const all = createMemo(() =>
    book.look(`photographs:${props.thing} ${props.board ?? ""}`, (read) =>
      read
        .touching(props.thing)
        .filter(({ kind, body }) => kind === "photograph" && body.board === props.board),
    ),
  );
  const alt = (one: NotebookEntry) =>
    t.alt(happenedInWords(one, book.zone, now()), told(one).note?.trim() ?? "");
  const shown = () => all().find(({ id }) => id === large());
  const strike = (id: string) => {
    setLarge(undefined);
    setStruck(book.strike([id]));
  };
  return (
    <section class="hung stack photographs not-on-paper">
      <h2>{t.heading}</h2>
      <Show when={all().length > 0} fallback={<p class="soft">{t.none}</p>}>
        <ul class="plain">
          <For each={all()}>
            {(one) => (
              <li>
                <button
                  type="button"
                  aria-label={t.enlarge(alt(one))}
                  aria-expanded={large() === one.id}
                  onClick={() => setLarge((was) => (was === one.id ? undefined : one.id))}
                >
                  <Picture told={told(one)} alt={alt(one)} />
                </button>
              </li>
            )}
          </For>
        </ul>
      </Show>
      <Show when={shown()} keyed>
        {(one) => (
          <figure>
            <Picture told={told(one)} alt={alt(one)} />
            <figcaption>{alt(one)}</figcaption>
            <div class="side-by-side">
              <button type="button" onClick={() => setLarge(undefined)}>
                {t.less}
              </button>
              <button type="button" onClick={() => strike(one.id)}>
                {t.strike}
              </button>
            </div>
          </figure>
        )}
      </Show>
      <Show when={struck()} keyed>
        {(id) => (
          <UndoStrip
            says={t.struck}
            onUndo={() => {
              book.strike([id]);
              setStruck(undefined);
            }}
          />
        )}
      </Show>
      <TakeOne of={props} onTaken={() => setStruck(undefined)} />
    </section>
  );
}
