import { createMemo, createSignal, Show } from "solid-js";
import { type Trial, trialView } from "../../core/views/trial.ts";
import { useBook } from "../book-store/use-book.tsx";
import { Empty } from "../controls/empty.tsx";
import type { ScreenProps } from "../place.ts";
import { Page } from "../shell/page.tsx";
import { dayInWords } from "../words/time.ts";
import * as words from "../words/words.ts";
import { Boards } from "./boards.tsx";
import { ChangesPanel } from "./changes-panel.tsx";
import { ClosePanel } from "./close-panel.tsx";
import { JarsPanel } from "./jars-panel.tsx";
import { KeyPanel } from "./key-panel.tsx";
import { PatchPanel } from "./patch-panel.tsx";
import { drawnTrial, geometryOf, unjudged } from "./trial-state.ts";
import "./trials.css";

/** One trial: its boards with what they have, what comes next, its key and its jars. */
export function TrialScreen(props: ScreenProps) {
  const book = useBook();
  const id = () => props.params.trial as string; // the page's path holds it
  const trial = createMemo(() => book.look(`trial-page:${id()}`, (read) => trialView(read, id())));
  const [pressed, setPressed] = createSignal<string>();
  const patch = () => trial()?.patches.find((p) => p.patch === pressed());
  const day = (at: string) => dayInWords(at, book.zone);
  return (
    <Show when={trial()} fallback={<NoTrial />}>
      {(t) => (
        <Page title={t().asked.question} note={words.trials.title}>
          <h1>{t().asked.question}</h1>
          <p>
            <b>{words.trials.states[t().state]}</b>{" "}
            <span class="soft">{words.trials.coatsDone(t().coatsDone, t().asked.coats)}</span>
          </p>
          <div class="trial-page">
            <div class="stack">
              <Boards
                boards={drawnTrial(t())}
                geometry={geometryOf(t())}
                label={words.trials.drawing(t().laidOut?.body.boards.length ?? 0, t().patches.length)}
                pressed={pressed()}
                onPatch={(name) => setPressed(pressed() === name ? undefined : name)}
              />
              <p class="small soft">
                {words.trials.tapPatch}{" "}
                {words.trials.laidDownOn(
                  day(t().laidOut?.at ?? t().askedAt),
                  t().laidOut?.body.keySha256.slice(0, 8) ?? "",
                )}
              </p>
              <LaidOutAs trial={t()} />
              <Show when={patch()}>{(p) => <PatchPanel trial={t()} patch={p()} />}</Show>
            </div>
            <div>
              <Next
                id={id()}
                state={t().state}
                left={unjudged(t()).length}
                open={t().key.state === "open"}
                read={t().readings.length}
              />
              <KeyPanel trial={t()} />
              <JarsPanel trial={t()} />
              <Show when={t().laidOut !== null}>
                <ChangesPanel trial={t()} />
              </Show>
              <Show when={t().key.state === "open"}>
                <ClosePanel trial={t()} />
              </Show>
            </div>
          </div>
        </Page>
      )}
    </Show>
  );
}

/** How the boards are used, and what this plan was known not to tell apart when it was laid down. */
function LaidOutAs(props: { readonly trial: Trial }) {
  const kind = () => {
    const { layout } = props.trial.asked;
    return layout !== undefined && isOffered(layout) ? words.plan.kinds[layout] : undefined;
  };
  const mixed = () =>
    (props.trial.laidOut?.body.cannotTell ?? []).flatMap(({ term, with: others }) =>
      others.map((other) => words.trials.cannotTell(term, other)),
    );
  return (
    <>
      <Show when={kind()}>
        {(used) => (
          <p>
            <b>{used().label}.</b> {used().says}
          </p>
        )}
      </Show>
      <Show when={mixed().length > 0}>
        <p>
          <b>{words.trials.cannotTellShort}:</b> {mixed().join(" ")}
        </p>
      </Show>
    </>
  );
}

const isOffered = (kind: string): kind is keyof typeof words.plan.kinds =>
  Object.hasOwn(words.plan.kinds, kind);

/** What comes next, the likeliest as the act. */
function Next(props: {
  readonly id: string;
  readonly state: string;
  readonly left: number;
  readonly open: boolean;
  readonly read: number;
}) {
  const act = () => {
    if (props.open && props.read > 0)
      return { to: `/trials/${props.id}/verdict`, says: words.trials.next.verdict };
    if (props.state === "judging" && props.left > 0)
      return { to: `/trials/${props.id}/judge`, says: words.trials.next.judge };
    return props.state === "judging" ? null : { to: "/bench", says: words.trials.next.toBench };
  };
  return (
    <section class="hung links">
      <Show when={act()} keyed>
        {(next) => (
          <a class="press main" href={next.to}>
            {next.says}
          </a>
        )}
      </Show>
      <Show when={act()?.says !== words.trials.next.judge}>
        <a class="press" href={`/trials/${props.id}/judge`}>
          {words.trials.next.judge}
        </a>
      </Show>
      <Show when={props.state !== "judging" && props.state !== "closed"}>
        <a class="press" href={`/trials/${props.id}/evenings`}>
          {words.trialEvenings.link}
        </a>
      </Show>
      <a class="press" href={`/trials/${props.id}/print`}>
        {words.trials.next.print}
      </a>
    </section>
  );
}

/** An address whose trial is not here. */
export function NoTrial() {
  return (
    <Page title={words.trials.notFound}>
      <h1 class="unseen">{words.trials.notFound}</h1>
      <Empty heading={words.trials.notFound} says={words.trials.notFoundSays}>
        <a class="press" href="/trials">
          {words.trials.title}
        </a>
      </Empty>
    </Page>
  );
}
