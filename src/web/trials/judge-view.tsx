import { createMemo, createSignal, Show } from "solid-js";
import { randomFromSeed } from "../../core/random.ts";
import { trialView } from "../../core/views/trial.ts";
import { useBook } from "../book-store/use-book.tsx";
import { Empty } from "../controls/empty.tsx";
import type { ScreenProps } from "../place.ts";
import { Page } from "../shell/page.tsx";
import * as words from "../words/words.ts";
import { newSecret } from "./ask/lay-down.ts";
import { JudgeSetup, type SetupChosen } from "./judge-setup.tsx";
import { drawnOrder, type Sitting } from "./judging-state.ts";
import { OneReading } from "./one-reading.tsx";
import { NoTrial } from "./trial-view.tsx";
import "./trials.css";

/** Judging: one code after another in a drawn order, and never a recipe before the key is open. */
export function JudgeView(props: ScreenProps) {
  const book = useBook();
  const id = () => props.params.trial as string; // the page's path holds it
  const trial = createMemo(() => book.look(`trial-page:${id()}`, (read) => trialView(read, id())));
  const [sitting, setSitting] = createSignal<Sitting>();
  const [at, setAt] = createSignal(0);
  function begin(chosen: SetupChosen): void {
    const t = trial();
    if (t === null) return;
    const { response, who, occasion } = chosen;
    setSitting({ ...chosen, order: drawnOrder(t, response, who, occasion, randomFromSeed(newSecret())) });
    setAt(0);
  }
  return (
    <Show when={trial()} fallback={<NoTrial />}>
      {(t) => (
        <Page title={words.trials.judgeTitle(t().asked.question)} note={words.trials.judging} headingUnseen>
          <Show when={sitting()} fallback={<JudgeSetup trial={t()} onBegin={begin} />}>
            {(now) => (
              <Show
                when={t().patches.find((p) => p.patch === now().order[at()])}
                fallback={
                  <Empty heading={words.trials.judgeDone} says={words.trials.judgeDoneSays}>
                    <a class="press main" href={`/trials/${id()}`}>
                      {words.trials.backToTrial}
                    </a>
                    <button type="button" onClick={() => setSitting(undefined)}>
                      {words.trials.judgeMore}
                    </button>
                  </Empty>
                }
              >
                {(patch) => (
                  <OneReading
                    trial={t()}
                    patch={patch()}
                    sitting={now()}
                    at={at()}
                    onNext={() => setAt(at() + 1)}
                    onBack={() => setAt(Math.max(0, at() - 1))}
                  />
                )}
              </Show>
            )}
          </Show>
        </Page>
      )}
    </Show>
  );
}
