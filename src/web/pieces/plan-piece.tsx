import { Show, untrack } from "solid-js";
import { pieceView } from "../../core/views/piece.ts";
import { useBook } from "../book-store/use-book.tsx";
import { finishOfRecipe } from "../look/finish-of-recipe.ts";
import type { ScreenProps } from "../place.ts";
import { address, navigate } from "../router.ts";
import { finishLook } from "../shell/finish-look.ts";
import { now } from "../shell/now.ts";
import { Page } from "../shell/page.tsx";
import { dayOf } from "../words/time.ts";
import * as words from "../words/words.ts";
import { Delivery } from "./delivery.tsx";
import { correctPiece, describePiece } from "./describe-piece.ts";
import { emptyDraft } from "./draft.ts";
import { HowGood } from "./how-good.tsx";
import { LayerNotes } from "./layer-notes.tsx";
import "./pieces.css";
import { EveningStrip } from "./evening-strip.tsx";
import { PlanFields } from "./plan-fields.tsx";
import { PlanFigures } from "./plan-figures.tsx";
import { createPlanning } from "./planning.ts";
import { fromPiece, fromTrial, repeated } from "./prefill.ts";
import { RepeatBeside } from "./repeat-beside.tsx";
import { madeOf } from "./shelf-choice.ts";
import { Shopping } from "./shopping.tsx";

/** A piece is described and planned in one go, or one in the book planned anew; the plan is worked out while the person types. */
export function PlanPieceView(props: ScreenProps) {
  const book = useBook();
  const known = untrack(() => pieceView(book.whole(), props.params.piece ?? ""));
  const before = untrack(() => pieceView(book.whole(), address().query.get("repeat") ?? ""));
  const won = untrack(() => fromTrial(book.whole(), address().query));
  const planning = createPlanning(
    book,
    untrack(() => ({
      ...emptyDraft(dayOf(now(), book.zone)),
      ...(known === null ? {} : fromPiece(known)),
      ...(before === null ? {} : repeated(before, dayOf(now(), book.zone))),
      ...won?.filled,
      ...(won === null ? {} : madeOf(book.whole(), won.batch)),
    })),
    won?.trial,
  );
  const finish = () => {
    const found = finishOfRecipe(planning.resin()?.resin?.grade, planning.input()?.cutLbPerGal);
    return found === undefined ? undefined : finishLook(found);
  };
  const keep = () => {
    planning.tell();
    const [area, schedule] = [planning.area(), planning.schedule()];
    if (planning.draft().name.trim() === "" || !area.ok || schedule === undefined) return;
    const parts = planning.parts().parts;
    if (known !== null) correctPiece(book, known, planning.draft(), area.value, parts);
    const piece = known?.id ?? describePiece(book, planning.draft(), area.value, parts);
    book.write({
      kind: "piece-scheduled",
      about: [piece, ...(won === null ? [] : [won.trial])],
      strikes: known?.schedule == null ? [] : [known.schedule.entry],
      body: schedule,
    });
    navigate(`/pieces/${piece}`);
  };
  const title = known === null ? words.pieces.newTitle : words.pieces.planTitle(known.name);
  return (
    <Page title={title} finish={finish()}>
      <h1>{title}</h1>
      <Show when={won} keyed>
        {(from) => <p class="soft">{words.pieces.fromTrial(from.question)}</p>}
      </Show>
      <div class="piece-desk">
        <PlanFields planning={planning} described={known !== null} />
        <section class="hung stack" aria-live="polite">
          <Show when={planning.worked()} fallback={<p class="soft">{words.pieces.notYet}</p>}>
            {(found) => (
              <>
                <PlanFigures
                  plan={found().plan}
                  steps={planning.schedule()?.steps ?? []}
                  cost={planning.cost()}
                />
                <HowGood
                  plan={found().plan}
                  searching={planning.better.searching()}
                  onEnd={planning.better.end}
                />
                <EveningStrip steps={planning.schedule()?.steps ?? []} />
                <Delivery
                  input={found().input}
                  wanted={planning.draft().wanted === "" ? null : planning.draft().wanted}
                />
                <Shopping
                  plan={found().plan}
                  resin={planning.draft().resin}
                  solvent={planning.draft().solvent}
                />
              </>
            )}
          </Show>
          <LayerNotes
            lies={planning.draft()}
            wax={planning.resin()?.resin?.wax ?? null}
            dryUm={planning.worked()?.plan.dryUm ?? null}
          />
          <button type="button" class="main" onClick={keep}>
            {words.pieces.keep}
          </button>
          <p class="soft small">{words.pieces.usual}</p>
        </section>
        <Show when={before} keyed>
          {(piece) => <RepeatBeside before={piece} planning={planning} />}
        </Show>
      </div>
    </Page>
  );
}
