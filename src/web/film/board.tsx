import { createMemo, createSignal, Show } from "solid-js";
import { trialView } from "../../core/views/trial.ts";
import { useBook } from "../book-store/use-book.tsx";
import { Choice } from "../controls/choice.tsx";
import { Photographs } from "../photographs/view.tsx";
import type { ScreenProps } from "../place.ts";
import { address } from "../router.ts";
import { Page } from "../shell/page.tsx";
import { NoTrial } from "../trials/trial-view.tsx";
import * as words from "../words/words.ts";
import { boardAtBench } from "./board-path.ts";
import { FilmCard } from "./film-card.tsx";

const t = words.film;

/** One board of a trial: the film on each of its patches. */
export function BoardScreen(props: ScreenProps) {
  const book = useBook();
  const trial = createMemo(() =>
    book.look(`trial-page:${props.params.trial}`, (read) => trialView(read, props.params.trial ?? "")),
  );
  const name = () => props.params.board ?? "";
  const patches = () => trial()?.patches.filter(({ board }) => board === name()) ?? [];
  const [picked, setPicked] = createSignal<string>();
  const shown = () =>
    patches().find(({ patch }) => patch === (picked() ?? address().query.get("patch"))) ?? patches()[0];
  return (
    <Show when={shown()} fallback={<NoTrial />}>
      {(patch) => (
        <Page title={t.boardTitle(name(), patch().wood)} note={t.board}>
          <div class="board-page stack">
            <h1>{t.boardTitle(name(), patch().wood)}</h1>
            <p>
              <a href={`/trials/${props.params.trial}`}>{trial()?.asked.question}</a>
            </p>
            <a class="press not-on-paper" href={boardAtBench(props.params.trial ?? "", name())}>
              {t.atBench}
            </a>
            <Choice
              label={t.patch}
              options={patches().map(({ patch: value, code }) => ({ value, label: code }))}
              value={patch().patch}
              onChange={setPicked}
              inline
            />
            <section class="hung">
              <FilmCard
                place={{ trial: props.params.trial ?? "", patch: patch().patch }}
                wood={patch().wood}
              />
            </section>
            <Photographs thing={props.params.trial ?? ""} board={name()} />
          </div>
        </Page>
      )}
    </Show>
  );
}
