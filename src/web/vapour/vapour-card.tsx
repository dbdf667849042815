import { createMemo, createSignal, For, Show } from "solid-js";
import type { SolventInput } from "../../core/registry/solvent.ts";
import { airView } from "../../core/views/air.ts";
import { isFresh } from "../bench/state.ts";
import { useBook } from "../book-store/use-book.tsx";
import { TextField } from "../controls/text-field.tsx";
import { now } from "../shell/now.ts";
import { upToDigits, withDigits } from "../words/number.ts";
import { lengthInWords } from "../words/time.ts";
import * as words from "../words/words.ts";
import { RoomForm } from "./room-form.tsx";
import {
  changesAsked,
  limits,
  plainNumber,
  type ShopRoom,
  shopRoom,
  standingOf,
  type Vapours,
  vapoursIn,
} from "./state.ts";
import "./vapour.css";

const t = words.vapour;

/** The work whose vapour is reckoned: what the plan says, to be typed over. */
export interface VapourWork {
  readonly solvent: SolventInput;
  /** Of the liquid without its resin, mL. */
  readonly solventMl: number;
  readonly minutes: number;
}

/** What the alcohol of a sitting comes to in the air of the room, against published limits. An estimate, not a clearance. */
export function VapourCard(props: { readonly work: VapourWork }) {
  const book = useBook();
  const room = book.view("shop-room", shopRoom);
  const [amount, setAmount] = createSignal<string>();
  const [minutes, setMinutes] = createSignal<string>();
  const amountText = () => amount() ?? upToDigits(props.work.solventMl, 2);
  const minutesText = () => minutes() ?? String(Math.round(props.work.minutes));
  const ml = () => plainNumber(amountText(), limits.amountMl.min, limits.amountMl.max);
  const long = () => plainNumber(minutesText(), limits.minutes.min, limits.minutes.max);
  const airC = () => {
    const read = book.look("air", airView);
    return read !== null && isFresh(read.at, Date.parse(now())) ? read.temperature - 273.15 : undefined;
  };
  const found = createMemo(() => {
    const [here, amountMl, lasts] = [room(), ml(), long()];
    if (here === null || amountMl === undefined || lasts === undefined) return undefined;
    return vapoursIn(here, { solvent: props.work.solvent, amountMl, minutes: lasts }, airC());
  });
  return (
    <section class="hung stack vapour-card">
      <h2 aria-live="polite">
        <Heading found={found()} asked={room() === null} />
      </h2>
      <Show when={room()} fallback={<p class="soft">{t.roomAsked}</p>}>
        {(here) => (
          <>
            <Shown found={found()} room={here()} />
            <div class="vapour-fields">
              <TextField
                label={t.amount}
                inputMode="decimal"
                value={amountText()}
                onInput={setAmount}
                wrong={ml() === undefined ? t.amountWrong : undefined}
              />
              <TextField
                label={t.minutes}
                inputMode="numeric"
                value={minutesText()}
                onInput={setMinutes}
                wrong={long() === undefined ? t.minutesWrong : undefined}
              />
            </div>
          </>
        )}
      </Show>
      <RoomForm room={room()} />
      <p class="soft small">{words.drying.estimate}</p>
    </section>
  );
}

function Heading(props: { readonly found: Vapours | string | undefined; readonly asked: boolean }) {
  const text = () => {
    if (props.asked || props.found === undefined) return t.title;
    if (typeof props.found === "string") return t.refused[props.found === "unnamed" ? "unnamed" : "outside"];
    return t.standing[standingOf(props.found)];
  };
  return <>{text()}</>;
}

function Shown(props: { readonly found: Vapours | string | undefined; readonly room: ShopRoom }) {
  const known = () => (typeof props.found === "object" ? props.found : undefined);
  return (
    <Show when={known()}>
      {(found) => (
        <>
          <p>
            <b>
              {t.ventilation(
                withDigits(found().ventilationM3PerH, 2),
                withDigits(changesAsked(found(), props.room), 2),
              )}
            </b>{" "}
            {t.ofQuarter(withDigits(found().mixtureShareOfLowerFlammableLimit * 400, 2))}{" "}
            <b>{aboveQuarter(found().minutesAboveQuarterFlammable)}</b>
          </p>
          <ul class="plain helps">
            <For each={found().components}>
              {(one) => (
                <li>
                  <b>{t.component(one.component)}</b>
                  <span>
                    {t.peak(withDigits(one.peakPpm, 2), withDigits(one.limitPpm, 3))}{" "}
                    <span class="soft">
                      {t.limitOf(one.limitBody, one.limitYear, one.limitSeen === "document")}
                    </span>
                    . {above(one.minutesAboveLimit)}.{" "}
                    {t.flammable(withDigits(one.shareOfLowerFlammableLimit * 400, 2))}
                  </span>
                </li>
              )}
            </For>
          </ul>
        </>
      )}
    </Show>
  );
}

const above = (minutes: number | null): string =>
  minutes === null ? t.aboveWhileClosed : minutes === 0 ? t.neverAbove : t.aboveFor(lengthInWords(minutes));

const aboveQuarter = (minutes: number | null): string =>
  minutes === null ? t.quarterWhileClosed : minutes === 0 ? "" : t.quarterFor(lengthInWords(minutes));
