import { createMemo, For, Show } from "solid-js";
import type { PieceView } from "../../core/views/piece.ts";
import { repeatView } from "../../core/views/repeat.ts";
import { useBook } from "../book-store/use-book.tsx";
import * as words from "../words/words.ts";
import type { Planning } from "./planning.ts";
import { coatsForSameFilm, repeatRows } from "./repeat-rows.ts";

/** The piece done before beside the one being planned: what stays, what changes, and what is not known any more. */
export function RepeatBeside(props: { readonly before: PieceView; readonly planning: Planning }) {
  const book = useBook();
  const seen = createMemo(() =>
    book.look(`pieces:repeat:${props.before.id}`, (read) => repeatView(read, props.before)),
  );
  const rows = () =>
    repeatRows(props.before, seen(), {
      area: props.planning.draft().area,
      resin: props.planning.resin()?.name,
      alcohol: props.planning.solvent()?.name,
      cutLbPerGal: props.planning.cutLbPerGal(),
      coats: props.planning.draft().coats,
      method: props.planning.draft().method,
      steps: props.planning.schedule()?.steps ?? [],
      worked: props.planning.worked(),
    });
  const sameFilm = () => coatsForSameFilm(props.before, props.planning.worked());
  return (
    <section class="hung stack">
      <h2>{words.pieces.beside(props.before.name)}</h2>
      <table class="piece-used">
        <thead>
          <tr>
            <td />
            <th scope="col">{words.pieces.lastTime}</th>
            <th scope="col">{words.pieces.thisTime}</th>
          </tr>
        </thead>
        <tbody>
          <For each={rows()}>
            {(row) => (
              <tr>
                <th scope="row">{row.what}</th>
                <td>{row.was ?? words.pieces.notWritten}</td>
                <td>
                  <Show
                    when={row.is === null || row.is !== row.was}
                    fallback={<span class="soft">{words.pieces.stays}</span>}
                  >
                    <b>{row.is ?? words.pieces.notWritten}</b>
                  </Show>
                </td>
              </tr>
            )}
          </For>
        </tbody>
      </table>
      <Show when={sameFilm()} keyed>
        {(coats) => (
          <>
            <p>{words.pieces.sameFilm(coats)}</p>
            <button type="button" onClick={() => props.planning.put({ coats: String(coats) })}>
              {words.pieces.takeCoats(coats)}
            </button>
          </>
        )}
      </Show>
      <Show when={seen().notKnown.length > 0}>
        <h3>{words.pieces.notKnownHead}</h3>
        <ul>
          <For each={seen().notKnown}>{(what) => <li>{words.pieces.notKnown[what]}</li>}</For>
        </ul>
      </Show>
    </section>
  );
}
