import { Show } from "solid-js";
import type { PieceView } from "../../core/views/piece.ts";
import { useBook } from "../book-store/use-book.tsx";
import { CalendarButton } from "../controls/calendar-button.tsx";
import { fileStem } from "../controls/file-stem.ts";
import { now } from "../shell/now.ts";
import * as words from "../words/words.ts";

type Schedule = NonNullable<PieceView["schedule"]>;

/** The evenings of a piece as a file for a calendar. */
export function TakeToCalendar(props: { readonly piece: PieceView; readonly schedule: Schedule }) {
  const book = useBook();
  const without = () => props.schedule.steps.filter((step) => step.day === undefined).length;
  return (
    <Show when={props.schedule.steps.some((step) => step.day !== undefined)}>
      <CalendarButton
        name={`${fileStem(props.piece.name, "piece")}.ics`}
        also={without() === 0 ? undefined : words.calendar.without(without())}
        write={async () => {
          const { pieceCalendar } = await import("./piece-calendar.ts");
          const when = { zone: book.zone, stamp: now() };
          return pieceCalendar(book.whole(), props.piece, props.schedule, when);
        }}
      />
    </Show>
  );
}
