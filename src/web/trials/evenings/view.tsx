import { createMemo, createSignal, For, Show } from "solid-js";
import type { ShopWindow } from "../../../core/pieces/shop-windows.ts";
import { type Trial, trialView } from "../../../core/views/trial.ts";
import { useBook } from "../../book-store/use-book.tsx";
import { CalendarButton } from "../../controls/calendar-button.tsx";
import { Caution } from "../../controls/caution.tsx";
import { DoesNotFit } from "../../controls/does-not-fit.tsx";
import { fileStem } from "../../controls/file-stem.ts";
import { SearchBar } from "../../controls/search-bar.tsx";
import { UndoStrip } from "../../controls/undo-strip.tsx";
import { EveningStrip } from "../../pieces/evening-strip.tsx";
import "../../pieces/pieces.css";
import { dayName } from "../../pieces/plan-words.ts";
import type { ScreenProps } from "../../place.ts";
import { now } from "../../shell/now.ts";
import { Page } from "../../shell/page.tsx";
import * as words from "../../words/words.ts";
import { NoTrial } from "../trial-view.tsx";
import { DueLate } from "./due-late.tsx";
import { EveningTables, NextEvening } from "./evening-lists.tsx";
import "./evenings.css";
import { Found } from "./found.tsx";
import { FreeFields } from "./free-fields.tsx";
import { MoveEvening } from "./move-evening.tsx";
import { jarsOf, letterOf, stripSteps } from "./planned.ts";
import { createTrialEvenings, minuteOf } from "./trial-evenings.ts";

const t = words.trialEvenings;

/** What is left to coat of a trial, laid into the evenings that the person has. */
export function TrialEveningsScreen(props: ScreenProps) {
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

function Evenings(props: { readonly trial: Trial }) {
  const book = useBook();
  const of = createTrialEvenings(book, () => props.trial);
  const question = () => props.trial.asked.question;
  const [moving, setMoving] = createSignal<string>();
  const [changed, setChanged] = createSignal<{ readonly says: string; readonly undo: () => void }>();
  const coats = () => of.planned()?.coats ?? [];
  const jars = () => jarsOf(of.agenda()?.coats ?? []);
  const change = (day: string, to: ShopWindow | null, says: string) => {
    const before = of.free();
    of.setFree((was) => ({ ...was, changes: [...was.changes, { day, to }] }));
    setMoving(undefined);
    setChanged({ says, undo: () => of.setFree(before) });
  };
  const keep = () => {
    const free = of.windows();
    if (free === undefined) return;
    const entry = of.keep(free);
    setChanged({ says: t.kept, undo: () => book.strike([entry]) });
  };
  const undo = () => {
    changed()?.undo();
    setChanged(undefined);
  };
  const calendar = async () => {
    const { takenToCalendar } = await import("./calendar.ts");
    const [planned, free] = [of.planned(), of.windows()];
    if (planned === undefined || free === undefined)
      throw new Error("There is a plan where there is a button");
    const when = { zone: book.zone, stamp: now() };
    const taken = takenToCalendar({ id: props.trial.id, question: question() }, planned, of.plans(), when);
    if (taken.isNew) of.keep(free);
    return taken.text;
  };
  return (
    <Page title={t.title(question())} note={words.trials.title}>
      <h1>{t.title(question())}</h1>
      <p class="soft not-on-paper">{t.says}</p>
      <Show when={of.agenda() !== null} fallback={<NothingLeft trial={props.trial} />}>
        <div class="trial-evenings">
          <section class="hung stack" aria-live="polite">
            <Show when={of.agenda() === undefined}>
              <p>{t.notRead}</p>
            </Show>
            <Show when={!of.hasRoom()}>
              <p>{t.none}</p>
            </Show>
            <Show when={of.planner.unfetched()}>
              <DoesNotFit heading={t.unfetched} says={t.unfetchedSays} />
            </Show>
            <Show when={of.found()}>{(plan) => <Found told={plan()} />}</Show>
            <SearchBar searching={of.planner.searching()} says={t.planning} onEnd={of.planner.end} />
            <Show when={changed()} keyed>
              {(what) => <UndoStrip says={what.says} onUndo={undo} />}
            </Show>
            <NextEvening coats={coats()} today={of.wall().slice(0, 10)} />
            <Show when={coats().length > 0}>
              <Caution says={words.pieces.air}>
                {words.pieces.rags} {words.pieces.estimate}
              </Caution>
            </Show>
            <Show when={of.found()?.plan} keyed>
              {(plan) => (
                <Show when={of.agenda()} keyed>
                  {({ input }) => (
                    <DueLate
                      input={input}
                      plan={plan}
                      coats={coats()}
                      now={of.wall()}
                      onBegin={(day, from, until) =>
                        change(
                          day,
                          [`${day}T${from}`, `${day}T${until}`],
                          words.evenings.beginsAt(dayName(day), from),
                        )
                      }
                    />
                  )}
                </Show>
              )}
            </Show>
          </section>
          <section class="hung stack trial-strip">
            <Show when={coats().length > 0}>
              <EveningStrip
                steps={stripSteps(coats())}
                nameOf={(step) => step.note ?? ""}
                now={{ day: of.wall().slice(0, 10), minute: minuteOf(of.wall()) }}
                act={(day) => (
                  <button
                    type="button"
                    class="words not-on-paper"
                    aria-label={words.evenings.moveThis(dayName(day))}
                    aria-expanded={moving() === day}
                    onClick={() => setMoving((was) => (was === day ? undefined : day))}
                  >
                    {words.evenings.move}
                  </button>
                )}
              />
              <Show when={moving()} keyed>
                {(day) => (
                  <MoveEvening
                    day={day}
                    windows={of.windows() ?? []}
                    now={of.wall()}
                    onMove={(to) => change(day, to, words.evenings.moved(dayName(day)))}
                    onLeaveOut={() => change(day, null, t.leftOut(dayName(day)))}
                  />
                )}
              </Show>
              <Show when={jars().some((jar) => jar !== null)} fallback={<p class="soft">{t.keyShut}</p>}>
                <ul class="plain">
                  <For each={jars()}>{(jar) => <li>{t.letter(letterOf(jar, jars()), jar ?? "")}</li>}</For>
                </ul>
              </Show>
              <EveningTables coats={coats()} />
              <p class="soft small">{t.waits(coats()[0]?.leastWaitMinutes ?? 0)}</p>
              <div class="to-take not-on-paper">
                <p class="side-by-side">
                  <button type="button" onClick={() => print()}>
                    {t.print}
                  </button>
                </p>
                <CalendarButton
                  name={`${fileStem(question(), "trial").slice(0, 60)}.ics`}
                  write={calendar}
                  also={t.calendarKept}
                />
              </div>
            </Show>
          </section>
          <section class="hung stack not-on-paper">
            <FreeFields of={of} onType={() => setChanged(undefined)} />
            <Show when={of.refused()} keyed>
              {(why) => <DoesNotFit heading={t.refused} says={why} />}
            </Show>
            <button type="button" onClick={keep}>
              {t.keep}
            </button>
          </section>
        </div>
      </Show>
    </Page>
  );
}

/** Nothing is left to coat, and why; what comes next. */
const NothingLeft = (props: { readonly trial: Trial }) => (
  <p>
    {props.trial.closed === null ? t.nothingLeft : t.closed}{" "}
    <a class="press" href={`/trials/${props.trial.id}`}>
      {t.toTrial}
    </a>
  </p>
);
