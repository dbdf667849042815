import { createSignal } from "solid-js";
import { isUnfetched } from "../lazy.tsx";
import * as words from "../words/words.ts";
import { saveFile } from "./save-file.ts";

/** Evenings as a file for whatever calendar the person keeps; what writes it is fetched when it is pressed. */
export function CalendarButton(props: {
  /** The file's name, `.ics` at its end. */
  readonly name: string;
  readonly write: () => Promise<string>;
  /** What is said once it is saved, beside its name. */
  readonly also?: string | undefined;
}) {
  const [said, setSaid] = createSignal<string>();
  const take = async () => {
    try {
      const also = props.also;
      saveFile(props.name, "text/calendar", await props.write());
      setSaid([words.calendar.took(props.name), ...(also === undefined ? [] : [also])].join(" "));
    } catch (error) {
      if (!isUnfetched(error)) throw error;
      setSaid(words.calendar.unfetched);
    }
  };
  return (
    <>
      <p class="side-by-side">
        <button type="button" onClick={() => void take()}>
          {words.calendar.take}
        </button>
      </p>
      <p role="status">{said()}</p>
    </>
  );
}
