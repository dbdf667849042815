import { createMemo, createResource, createSignal, For, Show } from "solid-js";
import { jarView } from "../../core/views/jar.ts";
import { type Trial, trialView } from "../../core/views/trial.ts";
import { useBook } from "../book-store/use-book.tsx";
import { Choice } from "../controls/choice.tsx";
import { Empty } from "../controls/empty.tsx";
import { createRoom } from "../controls/room.ts";
import { finishOfJar } from "../look/jar-finish.ts";
import type { ScreenProps } from "../place.ts";
import { finishLook } from "../shell/finish-look.ts";
import { Page } from "../shell/page.tsx";
import { NoTrial } from "../trials/trial-view.tsx";
import * as words from "../words/words.ts";
import { Across } from "./across.tsx";
import { Comparison } from "./comparison.tsx";
import { Course } from "./course.tsx";
import { Method } from "./method.tsx";
import { type Look, leading, looksRead, pairsTold, scaleFor } from "./questions.ts";
import { headline, sayingOf } from "./saying.ts";
import { Take } from "./take.tsx";
import { type OneVerdict, verdictsOn } from "./verdict-state.ts";
import "./verdict.css";

/** The verdict on a trial: a sentence, calipers against the band that matters, and the method one tap below. */
export function VerdictView(props: ScreenProps) {
  const book = useBook();
  const id = () => props.params.trial as string; // the page's path holds it
  const trial = createMemo(() => book.look(`trial-page:${id()}`, (read) => trialView(read, id())));
  return (
    <Show when={trial()} fallback={<NoTrial />}>
      {(t) => (
        <Show when={t().key.state === "open" && looksRead(t()).length > 0} fallback={<NotYet trial={t()} />}>
          <Told trial={t()} />
        </Show>
      )}
    </Show>
  );
}

function NotYet(props: { readonly trial: Trial }) {
  return (
    <Page title={words.verdict.title(props.trial.asked.question)} note={words.trials.title}>
      <h1 class="unseen">{words.verdict.none}</h1>
      <Empty
        heading={words.verdict.none}
        says={props.trial.key.state === "open" ? words.verdict.nothingRead : words.verdict.keyShut}
      >
        <a class="press" href={`/trials/${props.trial.id}`}>
          {words.verdict.backToTrial}
        </a>
      </Empty>
    </Page>
  );
}

function Told(props: { readonly trial: Trial }) {
  const book = useBook();
  const looks = () => looksRead(props.trial);
  const [picked, setPicked] = createSignal<string>();
  const look = () => looks().find((l) => l.name === picked()) ?? (looks()[0] as Look); // shown only with one at least
  const [verdicts] = createResource(
    () => ({ trial: props.trial, look: look() }),
    ({ trial, look: one }) => verdictsOn(trial, one),
  );
  const all = () => verdicts.latest ?? [];
  const answers = createMemo(
    () => new Map(all().flatMap((v) => (v.answer.ok ? [[v.factor, v.answer.value] as const] : []))),
  );
  const how = () => sayingOf(look());
  const scale = createMemo(() => scaleFor([...answers().values()]));
  const recipe = createMemo(() => leading(props.trial, answers()));
  const leadingPair = createMemo(() => {
    const [factor, answer] = [...answers()].find(([, a]) => a.pairs.some((p) => p.verdict === "different")) ??
      [...answers()][0] ?? [undefined, undefined];
    const pair = answer === undefined ? undefined : pairsTold(answer)[0];
    return factor === undefined || pair === undefined ? null : { factor, pair };
  });
  const finish = createMemo(() => {
    const jar = props.trial.jars.find((j) =>
      Object.entries(j.recipe).every(([f, level]) => recipe()[f] === level),
    );
    const seen =
      jar?.batch == null ? null : book.look(`jar:${jar.batch}`, (read) => jarView(read, jar.batch as string));
    const known = seen === null ? undefined : finishOfJar(seen);
    return known === undefined ? undefined : finishLook(known);
  });
  return (
    <Page title={words.verdict.title(props.trial.asked.question)} finish={finish()} note={words.trials.title}>
      <Show when={all().length > 0} fallback={<p role="status">{words.verdict.working(0, 1)}</p>}>
        <h1 class="verdict-head">{headOf(all(), look())}</h1>
        <Show when={looks().length > 1}>
          <Choice
            inline
            label={words.verdict.response}
            options={looks().map((l) => ({ value: l.name, label: l.name }))}
            value={look().name}
            onChange={setPicked}
          />
        </Show>
        <div class="verdict-page">
          <Comparisons verdicts={all()} scale={scale()} how={how()} />
          <div>
            <Show when={leadingPair()} keyed>
              {(lead) => (
                <Course trial={props.trial} look={look()} factor={lead.factor} pair={lead.pair} how={how()} />
              )}
            </Show>
            <Across trial={props.trial} looks={looks()} />
            <Take trial={props.trial} recipe={recipe()} />
          </div>
        </div>
        <Method trial={props.trial} look={look()} verdicts={all()} how={how()} />
      </Show>
    </Page>
  );
}

/** What was asked first comes first in the sentence; a wood says what it says below. */
function headOf(verdicts: readonly OneVerdict[], look: Look): string {
  const answered = verdicts.flatMap((v) => (v.answer.ok ? [v.answer.value] : []));
  const asked = verdicts
    .filter((v) => v.factor !== "wood")
    .flatMap((v) => (v.answer.ok ? [v.answer.value] : []));
  const told = asked.length > 0 ? asked : answered;
  if (told.length === 0) return words.verdict.headUnclear;
  return headline(told.flatMap(pairsTold), sayingOf(look), told[0]?.matters ?? 0);
}

const leastRoom = 300;

function Comparisons(props: {
  readonly verdicts: readonly OneVerdict[];
  readonly scale: readonly [number, number];
  readonly how: ReturnType<typeof sayingOf>;
}) {
  let frame!: HTMLDivElement;
  const room = createRoom(() => frame, leastRoom);
  const drawn = () => (room() > 640 ? Math.round(room() * 0.52) : room());
  return (
    <div ref={frame} class="comparisons">
      <For each={props.verdicts}>
        {(v) => (
          <Comparison verdict={v} scale={props.scale} how={props.how} width={drawn()} beside={room() > 640} />
        )}
      </For>
    </div>
  );
}
