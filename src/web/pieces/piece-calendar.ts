import { fallenAway } from "../../core/calendar-file/fallen-away.ts";
import { calendarFile } from "../../core/calendar-file/write-calendar.ts";
import type { Notebook } from "../../core/notebook/notebook.ts";
import { pieceEvents } from "../../core/pieces/piece-events.ts";
import { shopClock } from "../../core/schedule/shop-clock.ts";
import type { PieceView } from "../../core/views/piece.ts";
import { piecePlans } from "../../core/views/piece-plans.ts";
import { calendarWords } from "./calendar-words.ts";
import { recipeInWords } from "./kept-plan.ts";

type Schedule = NonNullable<PieceView["schedule"]>;

/** A piece's plan as a calendar file; evenings that earlier plans had and this one has not are cancelled in it. */
export function pieceCalendar(
  book: Notebook,
  piece: PieceView,
  schedule: Schedule,
  when: { readonly zone: string; readonly stamp: string },
): string {
  const clock = shopClock(when.zone);
  const says = calendarWords(piece.name, recipeInWords(schedule), clock);
  const plans = piecePlans(book.ordered(), piece.id);
  const events = pieceEvents(piece.id, schedule.steps, clock, says);
  const earlier = plans.steps.flatMap((steps) => pieceEvents(piece.id, steps, clock, says));
  return calendarFile({
    ...when,
    sequence: plans.changes,
    events: [...events, ...fallenAway(events, earlier)],
  });
}
