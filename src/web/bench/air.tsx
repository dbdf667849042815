import { Show } from "solid-js";
import { type AirView, airView, type DewMargin } from "../../core/views/air.ts";
import { useBook } from "../book-store/use-book.tsx";
import { Quantity } from "../controls/quantity.tsx";
import { now } from "../shell/now.ts";
import { known, withDigits } from "../words/number.ts";
import { whenInWords } from "../words/time.ts";
import { words } from "../words/words.ts";
import { AirForm } from "./air-form.tsx";
import { DewScale } from "./dew-scale.tsx";
import { isFresh } from "./state.ts";

/** `3`, `2.5`: a figure of a rule, without the nought that nobody writes. */
const formatShort = (value: number): string => String(Number(value.toFixed(1)));
const celsius = (kelvin: number): string => `${withDigits(kelvin - 273.15, 3)} °C`;

/** The shop's air, and how far the wood is from drawing water out of it. An old reading is told, and not reckoned with. */
export function Air() {
  const book = useBook();
  const air = book.view("air", airView);
  const fresh = () => {
    const read = air();
    return read !== null && isFresh(read.at, Date.parse(now())) ? read : null;
  };
  return (
    <section class="hung air">
      <Show when={fresh()} fallback={<NotRead last={air()} />}>
        {(read) => (
          <>
            <Show when={read().dew} fallback={<h2>{words.bench.air}</h2>}>
              {(dew) => <Margin dew={dew()} air={read()} />}
            </Show>
            <p class="soft small">
              {words.bench.airSays(
                celsius(read().temperature),
                `${withDigits(read().relativeHumidity * 100, 2)} %`,
                whenInWords(read().at, book.zone, now()),
              )}{" "}
              {read().woodRead ? "" : words.bench.woodAsAir}{" "}
              {read().dew === null ? words.bench.airOutside : ""}
            </p>
          </>
        )}
      </Show>
      <AirForm />
    </section>
  );
}

function NotRead(props: { readonly last: AirView | null }) {
  const book = useBook();
  return (
    <>
      <h2>{words.bench.air}</h2>
      <p class="soft">
        {words.bench.airNoneSays}{" "}
        {props.last === null ? "" : words.bench.airOld(whenInWords(props.last.at, book.zone, now()))}
      </p>
    </>
  );
}

function Margin(props: { readonly dew: DewMargin; readonly air: AirView }) {
  const says = () => {
    const { state, least, margin } = props.dew;
    if (state !== "thin") return words.bench.marginSays[state];
    return words.bench.marginSays.thin(`${Math.ceil(least - margin)} °C`);
  };
  return (
    <>
      <h2 class="margin">
        <span>{words.bench.marginHeading[props.dew.state]}</span>
        <Quantity value={props.dew.margin} digits={2} unit="°C" strong={false} />
      </h2>
      <DewScale dew={props.dew} wood={props.air.wood} />
      <p>
        <b>{says()}</b>{" "}
        <span class="soft small less">
          {words.bench.marginRule(
            `${formatShort(props.dew.least)} °C`,
            known(props.dew.margin, props.dew.giveOrTake).by,
          )}
        </span>
      </p>
    </>
  );
}
