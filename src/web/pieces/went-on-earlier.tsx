import { createMemo, createSignal, Show } from "solid-js";
import type { KnownTo } from "../../core/notebook/entry.ts";
import { useBook } from "../book-store/use-book.tsx";
import { Choice } from "../controls/choice.tsx";
import { TextField } from "../controls/text-field.tsx";
import { type Source, sources } from "../remembered/evening.ts";
import { dayChosen, instantOn, type TimeFault } from "../remembered/evening-time.ts";
import { now } from "../shell/now.ts";
import { dayOf, whenInWords } from "../words/time.ts";
import * as words from "../words/words.ts";
import { zoneOffset } from "../words/zone-offset.ts";

const t = words.evenings;

/** When a coat went on that nobody wrote down, as far as it is known. */
export interface WentOnAt {
  readonly happened: string;
  readonly happenedKnownTo: KnownTo;
  readonly remembered?: true;
}

const knownTo: Readonly<Record<Source, KnownTo>> = {
  sheet: "minute",
  exact: "minute",
  about: "hour",
  day: "day",
};
const isClock = (typed: string): boolean => /^([01]\d|2[0-3]):[0-5]\d$/.test(typed);

/** A coat that is on since earlier: off the printed schedule, or from memory and marked so. */
export function WentOnEarlier(props: {
  /** How it is called, as `Coat 2`. */
  readonly coat: string;
  /** When the coat before it went on: it cannot be earlier. */
  readonly before: string | undefined;
  readonly onWrite: (when: WentOnAt) => void;
}) {
  const book = useBook();
  const [day, setDay] = createSignal(dayOf(now(), book.zone));
  const [time, setTime] = createSignal("");
  const [source, setSource] = createSignal<Source>("sheet");
  const [told, setTold] = createSignal(false);
  const floor = () => props.before ?? new Date(0).toISOString();
  const chosen = createMemo(() => dayChosen("other", day(), dayOf(now(), book.zone)));
  const at = createMemo((): string | TimeFault | undefined => {
    const found = chosen();
    if (found === undefined) return undefined;
    const shop = {
      now: now(),
      offset: (instant: string) => zoneOffset(instant, book.zone),
      laidOutAt: floor(),
    };
    if (source() === "day") return instantOn(found, shop, undefined, floor());
    return isClock(time()) ? instantOn(found, shop, time(), floor()) : { code: "not-a-time", typed: time() };
  });
  const wrong = () => {
    const found = at();
    return !told() || found === undefined || typeof found === "string"
      ? undefined
      : words.remembered.fault(found, (instant) => whenInWords(instant, book.zone, now()));
  };
  const write = () => {
    setTold(true);
    const happened = at();
    if (typeof happened !== "string") return;
    props.onWrite({
      happened,
      happenedKnownTo: knownTo[source()],
      ...(source() === "sheet" ? {} : { remembered: true as const }),
    });
  };
  return (
    <details>
      <summary>{t.earlier(props.coat)}</summary>
      <div class="stack step-fields">
        <TextField
          label={words.remembered.otherDay}
          type="date"
          value={day()}
          wrong={told() && chosen() === undefined ? words.remembered.otherDayWrong : undefined}
          onInput={setDay}
        />
        <Choice
          label={words.remembered.source}
          value={source()}
          options={sources.map((value) => ({ value, ...words.remembered.sources[value] }))}
          onChange={setSource}
        />
        <Show when={source() !== "day"} fallback={<p class="wrong">{wrong() ?? ""}</p>}>
          <TextField
            label={words.remembered.time}
            type="time"
            value={time()}
            wrong={wrong()}
            onInput={setTime}
          />
        </Show>
        <button type="button" onClick={write}>
          {t.earlierAct}
        </button>
        <p class="soft small">{words.remembered.counts}</p>
      </div>
    </details>
  );
}
