import { For, Show } from "solid-js";
import { type PieceView, pieceIds, pieceView } from "../../core/views/piece.ts";
import { useBook } from "../book-store/use-book.tsx";
import { BoardInDashes, Empty } from "../controls/empty.tsx";
import { Page } from "../shell/page.tsx";
import * as words from "../words/words.ts";
import { recipeInWords } from "./kept-plan.ts";
import "./pieces.css";

/** Every piece in the book, the newest first. */
export function PiecesView() {
  const book = useBook();
  const pieces = book.view("pieces:list", (read) =>
    [...pieceIds(read)]
      .reverse()
      .map((id) => pieceView(read, id))
      .filter((piece): piece is PieceView => piece !== null),
  );
  return (
    <Page title={words.pieces.title}>
      <h1>{words.pieces.title}</h1>
      <Show
        when={pieces().length > 0}
        fallback={
          <Empty heading={words.pieces.none} says={words.pieces.noneSays} drawing={<BoardInDashes />}>
            <p>
              <a class="press" href="/pieces/new">
                {words.pieces.plan}
              </a>
            </p>
          </Empty>
        }
      >
        <ul class="plain">
          <For each={pieces()}>
            {(piece) => (
              <li class="hung">
                <h2>
                  <a href={`/pieces/${piece.id}`}>{piece.name}</a>
                </h2>
                <p class="soft">
                  {piece.areaTyped}
                  {piece.schedule === null ? "" : `. ${recipeInWords(piece.schedule)}`}
                </p>
              </li>
            )}
          </For>
        </ul>
        <a class="press" href="/pieces/new">
          {words.pieces.plan}
        </a>
      </Show>
    </Page>
  );
}
