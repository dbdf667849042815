import { createMemo, For, Show } from "solid-js";
import { trialIds, trialView } from "../../core/views/trial.ts";
import { useBook } from "../book-store/use-book.tsx";
import { BoardInDashes, Empty } from "../controls/empty.tsx";
import { Page } from "../shell/page.tsx";
import { dayInWords } from "../words/time.ts";
import * as words from "../words/words.ts";
import "./trials.css";

/** Every trial, the newest first. */
export function TrialsView() {
  const book = useBook();
  const trials = createMemo(() =>
    book.look("trials-listed", (read) => trialIds(read).flatMap((id) => trialView(read, id) ?? [])),
  );
  return (
    <Page title={words.trials.title}>
      <Show
        when={trials().length > 0}
        fallback={
          <>
            <h1 class="unseen">{words.trials.title}</h1>
            <Empty heading={words.trials.none} says={words.trials.noneSays} drawing={<BoardInDashes />}>
              <a class="press" href="/trials/new">
                {words.trials.ask}
              </a>
              <a class="press" href="/trials/import">
                {words.trialImport.link}
              </a>
            </Empty>
          </>
        }
      >
        <h1>{words.trials.title}</h1>
        <ul class="trial-list">
          <For each={trials()}>
            {(trial) => (
              <li>
                <a href={`/trials/${trial.id}`}>
                  <h2>{trial.asked.question}</h2>
                  <p>
                    <b>{words.trials.states[trial.state]}</b>{" "}
                    <span class="soft">
                      {words.trials.listed(
                        trial.patches.length,
                        trial.laidOut?.body.boards.length ?? 0,
                        trial.coatsDone,
                        trial.asked.coats,
                      )}
                    </span>
                  </p>
                  <p class="small soft">
                    {words.trials.askedOn(dayInWords(trial.askedAt, book.zone))}
                    {trial.key.state === "none" ? "" : `. ${words.trials.keyWord[trial.key.state]}`}
                  </p>
                </a>
              </li>
            )}
          </For>
        </ul>
        <p class="side-by-side">
          <a class="press main" href="/trials/new">
            {words.trials.ask}
          </a>
          <a class="press" href="/trials/import">
            {words.trialImport.link}
          </a>
        </p>
      </Show>
    </Page>
  );
}
