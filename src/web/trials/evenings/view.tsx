import { createMemo, createSignal, For, Show, untrack } from "solid-js";
import type { ScheduleStep } from "../../../core/notebook/kinds/pieces.ts";
import type { AgendaCoat } from "../../../core/registry/trial-agenda.ts";
import { trialAgenda } from "../../../core/registry/trial-agenda.ts";
import { type Trial, trialView } from "../../../core/views/trial.ts";
import { useHeldKeys } from "../../bench/held-keys.ts";
import { useBook } from "../../book-store/use-book.tsx";
import { DoesNotFit } from "../../controls/does-not-fit.tsx";
import { TextField } from "../../controls/text-field.tsx";
import { EveningFields } from "../../pieces/evening-fields.tsx";
import { EveningStrip } from "../../pieces/evening-strip.tsx";
import "../../pieces/pieces.css";
import { dayName } from "../../pieces/plan-words.ts";
import type { ScreenProps } from "../../place.ts";
import { now } from "../../shell/now.ts";
import { Page } from "../../shell/page.tsx";
import { clock, dayOf } from "../../words/time.ts";
import * as words from "../../words/words.ts";
import { NoTrial } from "../trial-view.tsx";
import { draftOf, type FreeDraft, keptWindows, windowsOf } from "./free-time.ts";
import { createPlanner, type Told } from "./planner.ts";

const t = words.trialEvenings;

/** What is left to coat of a trial, laid into the evenings that the person has. */
export function TrialEvenings(props: ScreenProps) {
  const book = useBook();
  const trial = createMemo(() =>
    book.look(`trial-evenings:${props.params.trial}`, (read) => trialView(read, props.params.trial ?? "")),
  );
  return (
    <Show when={trial()?.laidOut == null ? undefined : trial()} fallback={<NoTrial />}>
      {(shown) => <Evenings trial={shown()} />}
    </Show>
  );
}

const readMinutes = (typed: string): number | undefined => {
  const value = Number(typed.trim().replace(",", "."));
  return typed.trim() !== "" && value >= 0.5 && value <= 120 ? value : undefined;
};

/** A, B, C … for the jars, in their order. */
const letterOf = (jar: string | null, jars: readonly (string | null)[]): string =>
  jar === null ? "" : String.fromCharCode(65 + jars.indexOf(jar));

function Evenings(props: { readonly trial: Trial }) {
  const book = useBook();
  const wallOf = (ms: number) => {
    const instant = new Date(ms).toISOString();
    return `${dayOf(instant, book.zone)}T${clock(instant, book.zone)}`;
  };
  /** To the quarter of an hour, so that a plan stands still while it is read. */
  const quarter = createMemo(() => wallOf(Math.ceil(Date.parse(now()) / 900_000) * 900_000));
  const [kept, setKept] = createSignal(untrack(() => keptWindows(book.whole(), quarter())));
  const [draft, setDraft] = createSignal<FreeDraft>(untrack(() => draftOf(kept(), dayOf(now(), book.zone))));
  const [typed, setTyped] = createSignal({ patch: "3", change: "10" });
  const [told, setTold] = createSignal(false);
  /** What was kept stands until something is typed. */
  const put = (change: Partial<FreeDraft>) => {
    setKept(null);
    setTold(false);
    setDraft((was) => ({ ...was, ...change }));
  };
  const windows = createMemo(() => kept() ?? windowsOf(draft(), quarter()));
  const held = useHeldKeys(() => [props.trial]);
  const agenda = createMemo(() => {
    const [minutesPerPatch, changeMinutes, free] = [
      readMinutes(typed().patch),
      readMinutes(typed().change),
      windows(),
    ];
    if (minutesPerPatch === undefined || changeMinutes === undefined || free === undefined) return undefined;
    return book.look(`trial-agenda:${props.trial.id}:${JSON.stringify([typed(), free])}`, (read) =>
      trialAgenda(read, props.trial.id, held(props.trial.id), {
        ...{ windows: free, zone: book.zone, minutesPerPatch, wallOf },
        changeMinutes: Math.ceil(changeMinutes),
      }),
    );
  });
  const planner = createPlanner(() => agenda()?.input ?? null);
  const found = () => {
    const last = planner.told();
    return last === undefined || "refused" in last ? undefined : last;
  };
  const refused = () => {
    const last = planner.told();
    return last !== undefined && "refused" in last ? last.refused : undefined;
  };
  const coats = () => agenda()?.coats ?? [];
  const jars = () => [...new Set(coats().map((coat) => coat.jar))];
  const keep = () => {
    const free = windows();
    if (free === undefined) return;
    book.write({ kind: "free-time", body: { windows: free.map(([from, to]) => ({ from, to })) } });
    setTold(true);
  };
  const leaveOut = (day: string) => {
    const left = kept()?.filter(([from]) => !from.startsWith(day));
    if (left === undefined) put({ without: [...draft().without, day] });
    else setKept(left);
  };
  return (
    <Page title={t.title(props.trial.asked.question)} note={words.trials.title}>
      <h1>{t.title(props.trial.asked.question)}</h1>
      <p class="soft">{t.says}</p>
      <div class="piece-desk">
        <section class="hung stack piece-fields" aria-live="polite">
          <Show when={agenda() !== null} fallback={<p>{t.nothingLeft}</p>}>
            <Show when={refused()} keyed>
              {(why) => <DoesNotFit heading={t.refused} says={why} />}
            </Show>
            <Show when={found()}>{(plan) => <Found told={plan()} />}</Show>
            <Show when={planner.searching()}>
              <div class="side-by-side">
                <progress aria-label={t.planning} />
                <button type="button" onClick={planner.end}>
                  {t.enough}
                </button>
              </div>
            </Show>
            <Show when={found()?.plan} keyed>
              {(plan) => (
                <EveningStrip
                  steps={stepsOf(coats(), plan.starts)}
                  nameOf={(step) => step.note ?? ""}
                  act={(day) => (
                    <button
                      type="button"
                      class="words"
                      aria-label={t.notThisOf(dayName(day))}
                      onClick={() => leaveOut(day)}
                    >
                      {t.notThis}
                    </button>
                  )}
                />
              )}
            </Show>
            <Show when={jars().some((jar) => jar !== null)} fallback={<p class="soft">{t.keyShut}</p>}>
              <ul class="plain">
                <For each={jars()}>{(jar) => <li>{t.letter(letterOf(jar, jars()), jar ?? "")}</li>}</For>
              </ul>
            </Show>
            <p class="soft small">{t.waits(coats()[0]?.leastWaitMinutes ?? 0)}</p>
          </Show>
        </section>
        <section class="hung stack piece-mix">
          <h2>{t.free}</h2>
          <EveningFields
            draft={draft()}
            untilWrong={draft().until <= draft().from ? words.pieces.untilWrong : undefined}
            onChange={put}
          />
          <button type="button" onClick={keep}>
            {t.keep}
          </button>
          <p role="status">{told() ? t.kept : ""}</p>
          <TextField
            label={t.minutesPerPatch}
            inputMode="decimal"
            value={typed().patch}
            wrong={readMinutes(typed().patch) === undefined ? t.minutesWrong : undefined}
            onInput={(patch) => setTyped((was) => ({ ...was, patch }))}
          />
          <TextField
            label={t.change}
            inputMode="decimal"
            value={typed().change}
            hint={t.usual}
            wrong={readMinutes(typed().change) === undefined ? t.minutesWrong : undefined}
            onInput={(change) => setTyped((was) => ({ ...was, change }))}
          />
        </section>
      </div>
    </Page>
  );

  /** Planned coats as the strip takes its steps. */
  function stepsOf(all: readonly AgendaCoat[], starts: Readonly<Record<string, string>>): ScheduleStep[] {
    return all
      .flatMap((coat) => {
        const start = starts[coat.task];
        return start === undefined ? [] : [{ coat, start }];
      })
      .sort((a, b) => (a.start < b.start ? -1 : 1))
      .map(({ coat, start }) => ({
        step: coat.task,
        what: "coat" as const,
        day: start.slice(0, 10),
        at: start.slice(11, 16),
        minutes: coat.minutes,
        leastWaitMinutes: coat.leastWaitMinutes,
        note: t.block(letterOf(coat.jar, jars()), coat.coat),
      }));
  }
}

/** When it ends, and how sure it is that nothing is better. */
function Found(props: { readonly told: Exclude<Told, { readonly refused: string }> }) {
  const when = (at: string) => `${dayName(at.slice(0, 10))}, ${at.slice(11, 16)}`;
  const sure = () => {
    const { provenBest, lowerBound } = props.told;
    if (provenBest !== null) return t.proven[provenBest];
    return lowerBound === null ? "" : t.bound(when(lowerBound));
  };
  return (
    <Show when={props.told.plan} keyed fallback={<p>{t.none}</p>}>
      {(plan) => (
        <p>
          <b>{t.ends(when(plan.finish), plan.sessions)}</b> {sure()} {t.idle(plan.idleMinutes)}
        </p>
      )}
    </Show>
  );
}
