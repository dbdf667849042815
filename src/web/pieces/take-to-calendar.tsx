import { createSignal, Show } from "solid-js";
import type { PieceView } from "../../core/views/piece.ts";
import { useBook } from "../book-store/use-book.tsx";
import { fileStem } from "../controls/file-stem.ts";
import { saveFile } from "../controls/save-file.ts";
import { isUnfetched } from "../lazy.tsx";
import { now } from "../shell/now.ts";
import * as words from "../words/words.ts";

type Schedule = NonNullable<PieceView["schedule"]>;

/** The evenings as a file for whatever calendar the person keeps; what writes it is fetched when it is pressed. */
export function TakeToCalendar(props: { readonly piece: PieceView; readonly schedule: Schedule }) {
  const book = useBook();
  const [said, setSaid] = createSignal<string>();
  const without = () => props.schedule.steps.filter((step) => step.day === undefined).length;
  const take = async () => {
    try {
      const { pieceCalendar } = await import("./piece-calendar.ts");
      const when = { zone: book.zone, stamp: now() };
      const name = `${fileStem(props.piece.name, "piece")}.ics`;
      saveFile(name, "text/calendar", pieceCalendar(book.whole(), props.piece, props.schedule, when));
      const left = without() === 0 ? [] : [words.calendar.without(without())];
      setSaid([words.calendar.took(name), ...left].join(" "));
    } catch (error) {
      if (!isUnfetched(error)) throw error;
      setSaid(words.calendar.unfetched);
    }
  };
  return (
    <Show when={props.schedule.steps.some((step) => step.day !== undefined)}>
      <p class="side-by-side">
        <button type="button" onClick={() => void take()}>
          {words.calendar.take}
        </button>
      </p>
      <p role="status">{said()}</p>
    </Show>
  );
}
