import { Show } from "solid-js";
import { useBook } from "../book-store/use-book.tsx";
import { BoardInDashes, Empty } from "../controls/empty.tsx";
import { boardPath } from "../film/board-path.ts";
import type { ScreenProps } from "../place.ts";
import { Page } from "../shell/page.tsx";
import { NoTrial } from "../trials/trial-view.tsx";
import * as words from "../words/words.ts";
import { AtHand } from "./at-hand.tsx";
import { BenchCaution } from "./bench-caution.tsx";
import { Next } from "./next.tsx";
import { type Bench, useBench } from "./use-bench.ts";
import "./bench.css";

const t = words.bench;

/** The bench with one board in hand, as its label opens it: what is due on it, and its film a tap further. */
export function BoardInHandView(props: ScreenProps) {
  const book = useBook();
  const inHand = () => ({ trial: props.params.trial ?? "", board: props.params.board ?? "" });
  const bench = useBench(book, inHand);
  const board = () => bench.trials()[0]?.laidOut?.body.boards.find((one) => one.name === inHand().board);
  return (
    <Show when={board()} fallback={<NoTrial />}>
      {(laid) => (
        <Page title={t.boardTitle(laid().name)} note={t.boardTitle(laid().name)} finish={bench.look()}>
          <div class="bench" classList={{ colourless: bench.look() === undefined }}>
            <div class="at-hand">
              <p>
                <b>{t.boardTitle(laid().name)}</b>{" "}
                <span class="soft">{t.boardSays(laid().wood, laid().plank)}</span>
              </p>
              <AtHand bench={bench} nothingDue={<NothingDue bench={bench} board={laid().name} />} />
            </div>
            <div class="beside">
              <p class="side-by-side not-on-paper">
                <a class="press" href={boardPath(inHand().trial, inHand().board)}>
                  {t.boardFilm}
                </a>
                <a class="press" href="/bench">
                  {t.wholeBench}
                </a>
              </p>
              <BenchCaution bench={bench} />
            </div>
            <div class="after">
              <Next bench={bench} />
            </div>
          </div>
        </Page>
      )}
    </Show>
  );
}

function NothingDue(props: { readonly bench: Bench; readonly board: string }) {
  const waits = () => props.bench.next().later.length > 0;
  return (
    <section>
      <h1 class="unseen">{t.boardTitle(props.board)}</h1>
      <Empty
        heading={waits() ? t.boardNothing(props.board) : t.boardDone(props.board)}
        says={waits() ? t.nothingDueSays : t.allCoatedSays}
        drawing={<BoardInDashes />}
      />
    </section>
  );
}
