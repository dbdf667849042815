import { createMemo, Show } from "solid-js";
import { pieceView } from "../../core/views/piece.ts";
import { useBook } from "../book-store/use-book.tsx";
import { Caution } from "../controls/caution.tsx";
import type { ScreenProps } from "../place.ts";
import { Page } from "../shell/page.tsx";
import * as words from "../words/words.ts";
import { costOfSchedule, planOfSchedule, recipeInWords } from "./kept-plan.ts";
import "./pieces.css";
import { NoPiece } from "./no-piece.tsx";
import { PlanFigures } from "./plan-figures.tsx";
import { PlanTable } from "./plan-table.tsx";
import { WithThePiece } from "./with-the-piece.tsx";

/** The steps to repeat on one sheet, with blanks for a pencil and a bar to measure the print by. */
export function PiecePaper(props: ScreenProps) {
  const book = useBook();
  const piece = createMemo(() =>
    book.look(`piece:${props.params.piece}`, (read) => pieceView(read, props.params.piece ?? "")),
  );
  return (
    <Show when={piece()?.schedule} keyed fallback={<NoPiece />}>
      {(schedule) => (
        <Page title={words.pieces.printTitle(piece()?.name ?? "")}>
          <p class="not-on-paper side-by-side">
            <button type="button" onClick={() => print()}>
              {words.pieces.printIt}
            </button>
            <a class="press" href={`/pieces/${props.params.piece}`}>
              {piece()?.name}
            </a>
          </p>
          <h1>{piece()?.name}</h1>
          <p>
            {piece()?.areaTyped}
            {piece()?.wood === null ? "" : `, ${piece()?.wood}`}. <b>{recipeInWords(schedule)}</b>
          </p>
          <Show when={planOfSchedule(schedule)} keyed>
            {(found) => (
              <PlanFigures
                plan={found.plan}
                steps={schedule.steps}
                cost={costOfSchedule(book.whole(), schedule, found.plan)}
              />
            )}
          </Show>
          <PlanTable steps={schedule.steps} blanks />
          <Caution says={words.pieces.air}>
            {words.pieces.rags} {words.pieces.estimate}
          </Caution>
          <Show when={piece()}>{(shown) => <WithThePiece piece={shown()} />}</Show>
          <p class="small">{words.pieces.usual}</p>
          <MeasureBar />
        </Page>
      )}
    </Show>
  );
}

/** Drawn in millimetres: a box of the page would be snapped to whole pixels. */
const MeasureBar = () => (
  <svg class="measure" width="100mm" height="6mm" viewBox="0 0 100 6" aria-hidden="true">
    <path d="M0.1 1V5M0.1 3H99.9M99.9 1V5" fill="none" stroke="currentColor" stroke-width="0.3" />
    <text x="50" y="2.4" font-size="2.8" class="m">
      {words.pieces.measure}
    </text>
  </svg>
);
