import { createMemo, createSignal, Show } from "solid-js";
import { latestMs } from "../../core/notebook/entry-time.ts";
import type { Body } from "../../core/notebook/kinds/all.ts";
import { strikesToCorrect } from "../../core/notebook/write-entry.ts";
import { type PieceView as Piece, pieceView } from "../../core/views/piece.ts";
import { plannedUsed } from "../../core/views/planned-used.ts";
import { useBook } from "../book-store/use-book.tsx";
import { Caution } from "../controls/caution.tsx";
import { UndoStrip } from "../controls/undo-strip.tsx";
import { FilmCard } from "../film/film-card.tsx";
import { Photographs } from "../photographs/view.tsx";
import type { ScreenProps } from "../place.ts";
import { finishLook } from "../shell/finish-look.ts";
import { Page } from "../shell/page.tsx";
import { VapourCard } from "../vapour/vapour-card.tsx";
import { dayInWords } from "../words/time.ts";
import * as words from "../words/words.ts";
import { Delivery } from "./delivery.tsx";
import {
  coatStep,
  costOfSchedule,
  finishOfSchedule,
  gramsPerMl,
  mixedWith,
  planOfSchedule,
  recipeInWords,
  waxOfSchedule,
} from "./kept-plan.ts";
import { LayerNotes } from "./layer-notes.tsx";
import { CountedParts } from "./parts/counted-parts.tsx";
import { PieceJar, usePieceJar } from "./piece-jar.tsx";
import { liesOf } from "./prefill.ts";
import { vapourWork } from "./vapour-work.ts";
import "./pieces.css";
import { CarryOn, type Changed, Sooner } from "./carry-on.tsx";
import { createCarryingOn } from "./carrying-on.ts";
import { EveningStrip } from "./evening-strip.tsx";
import { NoPiece } from "./no-piece.tsx";
import { PlanFigures } from "./plan-figures.tsx";
import { PlanTable } from "./plan-table.tsx";
import { dayName } from "./plan-words.ts";
import { Shopping } from "./shopping.tsx";
import { TakeToCalendar } from "./take-to-calendar.tsx";
import { Tonight } from "./tonight.tsx";
import { UsedTable } from "./used-table.tsx";
import { WentOn } from "./went-on.tsx";
import { type WentOnAt, WentOnEarlier } from "./went-on-earlier.tsx";

/** One piece: the recipe to repeat, what to mix, the evenings, and each coat as it goes on. */
export function PieceScreen(props: ScreenProps) {
  const book = useBook();
  const piece = createMemo(() =>
    book.look(`piece:${props.params.piece}`, (read) => pieceView(read, props.params.piece ?? "")),
  );
  return (
    <Show when={piece()} fallback={<NoPiece />}>
      {(shown) => <PiecePage piece={shown()} />}
    </Show>
  );
}

/** Coats that are on, by number: when, and the entry that says so. */
function coatsOn(piece: Piece): ReadonlyMap<number, { readonly at: string; readonly entry: string }> {
  return new Map(
    piece.layers.flatMap((entry) => {
      const coat = (entry.body as Body<"layer-applied">).planned?.coat;
      return coat === undefined
        ? []
        : [[coat, { at: new Date(latestMs(entry)).toISOString(), entry: entry.id }] as const];
    }),
  );
}

function PiecePage(props: { readonly piece: Piece }) {
  const book = useBook();
  const [wrote, setWrote] = createSignal<{ readonly coat: number } | null>(null);
  /** The same plan is the same plan, however often the piece is read anew: what is being typed below it stays. */
  const schedule = createMemo(() => props.piece.schedule, null, {
    equals: (a, b) => a?.entry === b?.entry,
  });
  const worked = createMemo(() => planOfSchedule(schedule()));
  const finish = createMemo(() => {
    const found = book.look(`piece-finish:${props.piece.id}`, (read) => finishOfSchedule(read, schedule()));
    return found === undefined ? undefined : finishLook(found);
  });
  const on = createMemo(() => coatsOn(props.piece));
  const used = createMemo(() => plannedUsed(props.piece, gramsPerMl(schedule())));
  const cost = () => {
    const plan = worked()?.plan;
    return plan === undefined ? null : costOfSchedule(book.whole(), schedule(), plan);
  };
  const next = () => {
    const coats = schedule()?.recipe.coats ?? 0;
    for (let coat = 1; coat <= coats; coat++) if (!on().has(coat)) return coat;
    return undefined;
  };
  const bands = () =>
    Array.from({ length: schedule()?.recipe.coats ?? 0 }, (_, i) => ({
      label: String(i + 1),
      fill: on().has(i + 1) ? finish()?.fill : undefined,
    }));

  const going = createCarryingOn(book, () => props.piece, schedule, on);
  // What was just done to the plan outlives the page's parts, which a new plan makes anew.
  const [moving, setMoving] = createSignal<string>();
  const [changed, setChanged] = createSignal<Changed>();
  const from = usePieceJar(() => props.piece, next);
  const putOn = (coat: number, when?: WentOnAt) => {
    const recipe = schedule()?.recipe;
    if (recipe === undefined) return;
    const jar = from.jar();
    book.write({
      ...when,
      kind: "layer-applied",
      about: [props.piece.id, ...(jar === undefined ? [] : [jar])],
      body: {
        sort: "coat",
        targets: [{ piece: props.piece.id }],
        from: jar === undefined ? [] : [{ batch: jar }],
        method: coatStep(schedule(), coat)?.method ?? recipe.method,
        planned: { coat },
      },
    });
    setWrote({ coat });
  };
  const undo = (coat: number) => {
    const current = book.whole().entry(on().get(coat)?.entry ?? "");
    if (current !== undefined) book.strike(strikesToCorrect(current));
    setWrote(null);
  };

  return (
    <Page title={props.piece.name} finish={finish()} bands={bands()}>
      <h1>{props.piece.name}</h1>
      <p class="soft">
        {props.piece.areaTyped}
        {props.piece.wood === null ? "" : `, ${props.piece.wood}`}
      </p>
      <CountedParts piece={props.piece} />
      <Show
        when={schedule()}
        keyed
        fallback={
          <p>
            {words.pieces.noPlan}{" "}
            <a class="press" href={`/pieces/${props.piece.id}/plan`}>
              {words.pieces.planIt}
            </a>
          </p>
        }
      >
        {(kept) => (
          <>
            <p class="lead">{words.pieces.repeatSays(recipeInWords(kept))}</p>
            <div class="piece-desk">
              <section class="hung stack piece-mix">
                <Tonight of={going} />
                <Caution says={words.pieces.air}>
                  {words.pieces.rags} {words.pieces.estimate}
                </Caution>
                <Show when={wrote()} keyed>
                  {(last) => (
                    <UndoStrip says={words.pieces.wrote(last.coat)} onUndo={() => undo(last.coat)} />
                  )}
                </Show>
                <Show when={next()} keyed fallback={<p>{words.pieces.allOn}</p>}>
                  {(coat) => (
                    <>
                      <PieceJar from={from} />
                      <button type="button" class="main" onClick={() => putOn(coat)}>
                        {words.pieces.isOn(coat)}
                      </button>
                      <WentOnEarlier
                        coat={coat}
                        before={on().get(coat - 1)?.at}
                        onWrite={(when) => putOn(coat, when)}
                      />
                    </>
                  )}
                </Show>
                <Show when={worked()} keyed>
                  {(found) => <PlanFigures plan={found.plan} steps={kept.steps} cost={cost()} />}
                </Show>
                <Show when={on().size === 0 && worked()} keyed>
                  {(found) => (
                    <>
                      <Delivery input={found.input} wanted={props.piece.wanted} />
                      <Shopping
                        plan={found.plan}
                        resin={mixedWith(kept).resin}
                        solvent={mixedWith(kept).solvent}
                      />
                    </>
                  )}
                </Show>
                <LayerNotes
                  lies={liesOf(props.piece)}
                  wax={waxOfSchedule(book.whole(), kept)}
                  dryUm={worked()?.plan.dryUm ?? null}
                />
                <p class="side-by-side">
                  <a class="press" href={`/pieces/${props.piece.id}/paper`}>
                    {words.pieces.printIt}
                  </a>
                  <a class="press" href={`/pieces/${props.piece.id}/plan`}>
                    {words.pieces.change}
                  </a>
                  <a class="press" href={`/pieces/new?repeat=${props.piece.id}`}>
                    {words.pieces.again}
                  </a>
                </p>
                <TakeToCalendar piece={props.piece} schedule={kept} />
                <p class="soft small">{words.pieces.usual}</p>
              </section>
              <section class="hung stack piece-strip">
                <EveningStrip
                  steps={kept.steps}
                  isDone={going.isDone}
                  now={going.wall()}
                  act={(day) => (
                    <Show when={going.canReplan()}>
                      <button
                        type="button"
                        class="words"
                        aria-label={words.evenings.moveThis(dayName(day))}
                        aria-expanded={moving() === day}
                        onClick={() => setMoving((was) => (was === day ? undefined : day))}
                      >
                        {words.evenings.move}
                      </button>
                    </Show>
                  )}
                />
                <CarryOn
                  of={going}
                  moving={moving()}
                  changed={changed()}
                  onChange={(what) => {
                    setMoving(undefined);
                    setChanged(what);
                  }}
                />
                <Sooner of={going} onChange={setChanged} />
                <PlanTable
                  steps={kept.steps}
                  after={(coat) => (
                    <Show when={on().get(coat)} keyed>
                      {(done) => (
                        <span class="soft"> {words.pieces.done(dayInWords(done.at, book.zone))}</span>
                      )}
                    </Show>
                  )}
                />
              </section>
              <Show when={worked()} keyed>
                {(found) => <VapourCard work={vapourWork(found.input, props.piece.areaM2)} />}
              </Show>
              <Show when={on().size > 0}>
                <section class="hung stack">
                  <h2>{words.pieces.plannedBeside}</h2>
                  <UsedTable used={used()} />
                  <p class="soft small">{words.pieces.plannedBesideSays}</p>
                  <WentOn coats={used().coats} />
                </section>
                <section class="hung">
                  <FilmCard place={{ piece: props.piece.id }} wood={props.piece.wood} />
                </section>
              </Show>
            </div>
          </>
        )}
      </Show>
      <Photographs thing={props.piece.id} />
    </Page>
  );
}
