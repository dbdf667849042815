import { createMemo, Show } from "solid-js";
import { coatsOn } from "../../core/views/coats-on.ts";
import { type PieceView as Piece, pieceView } from "../../core/views/piece.ts";
import { plannedUsed } from "../../core/views/planned-used.ts";
import { useBook } from "../book-store/use-book.tsx";
import { FilmCard } from "../film/film-card.tsx";
import { Photographs } from "../photographs/view.tsx";
import type { ScreenProps } from "../place.ts";
import { finishLook } from "../shell/finish-look.ts";
import { Page } from "../shell/page.tsx";
import { VapourCard } from "../vapour/vapour-card.tsx";
import * as words from "../words/words.ts";
import "./pieces.css";
import { createCarryingOn } from "./carrying-on.ts";
import { finishOfSchedule, gramsPerMl, planOfSchedule, recipeInWords } from "./kept-plan.ts";
import { NoPiece } from "./no-piece.tsx";
import { CountedParts } from "./parts/counted-parts.tsx";
import { createChanging, PieceEvenings } from "./piece-evenings.tsx";
import { PieceMix } from "./piece-mix.tsx";
import { createPuttingOn } from "./putting-on.ts";
import { UsedTable } from "./used-table.tsx";
import { vapourWork } from "./vapour-work.ts";
import { WentOn } from "./went-on.tsx";

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

function PiecePage(props: { readonly piece: Piece }) {
  const book = useBook();
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
  const bands = () =>
    Array.from({ length: schedule()?.recipe.coats ?? 0 }, (_, i) => ({
      label: String(i + 1),
      fill: on().whole.has(i + 1) ? finish()?.fill : undefined,
    }));
  /** Where a film grows side by side, that of the side which was worked last. */
  const lastSurface = () => on().logged.at(-1)?.surface;
  const place = () => {
    const part = lastSurface();
    return { piece: props.piece.id, ...(part === undefined ? {} : { part }) };
  };
  const going = createCarryingOn(book, () => props.piece, schedule, on);
  const changing = createChanging();
  const putting = createPuttingOn(book, () => props.piece, schedule, on);
  return (
    <Page title={props.piece.name} finish={finish()} bands={bands()}>
      <h1>{props.piece.name}</h1>
      <p class="soft">
        {props.piece.areaTyped}
        {props.piece.wood === null ? "" : `, ${props.piece.wood}`}
      </p>
      <CountedParts piece={props.piece} />
      <Show when={schedule()} keyed fallback={<NoPlan piece={props.piece.id} />}>
        {(kept) => (
          <>
            <p class="lead">{words.pieces.repeatSays(recipeInWords(kept))}</p>
            <div class="piece-desk">
              <PieceMix
                piece={props.piece}
                schedule={kept}
                worked={worked()}
                on={on()}
                going={going}
                putting={putting}
              />
              <PieceEvenings steps={kept.steps} on={on()} going={going} changing={changing} />
              <Show when={on().logged.length > 0}>
                <section class="hung stack">
                  <h2>{words.pieces.plannedBeside}</h2>
                  <UsedTable used={used()} />
                  <p class="soft small">{words.pieces.plannedBesideSays}</p>
                  <WentOn coats={used().coats} />
                </section>
              </Show>
              <Show when={worked()} keyed>
                {(found) => <VapourCard work={vapourWork(found.input, props.piece.areaM2)} />}
              </Show>
              <Show when={on().logged.length > 0}>
                <section class="hung">
                  <Show when={lastSurface()}>
                    {(name) => <p class="soft">{words.surfaces.filmOf(name())}</p>}
                  </Show>
                  <FilmCard place={place()} wood={props.piece.wood} />
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

const NoPlan = (props: { readonly piece: string }) => (
  <p>
    {words.pieces.noPlan}{" "}
    <a class="press" href={`/pieces/${props.piece}/plan`}>
      {words.pieces.planIt}
    </a>
  </p>
);
