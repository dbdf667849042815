import { For, Show } from "solid-js";
import type { CoatUsed, Compared, PlannedUsed } from "../../core/views/planned-used.ts";
import { useBook } from "../book-store/use-book.tsx";
import { upToDigits } from "../words/number.ts";
import { dayOf, lengthInWords } from "../words/time.ts";
import * as words from "../words/words.ts";
import { millilitres } from "./amount-text.ts";
import { dayName } from "./plan-words.ts";

/** What was planned for each coat and what it took: a sentence first, then coat by coat. */
export function UsedTable(props: { readonly used: PlannedUsed }) {
  const book = useBook();
  const onDay = (coat: CoatUsed) => (coat.onAt === null ? null : dayOf(coat.onAt, book.zone));
  /** `600 mL, 68 mL/m²` */
  const liquid =
    ({ share }: CoatUsed) =>
    (ml: number) =>
      `${millilitres(ml)}, ${words.pieces.aSquareMetre(upToDigits(ml / (props.used.areaM2 * share), 2))}`;
  return (
    <div class="stack">
      <p>
        {sentence(props.used.liquid, words.pieces.liquidUsed)}{" "}
        {sentence(props.used.hands, words.pieces.handsUsed)}
      </p>
      <table class="piece-used coats-used">
        <thead>
          <tr>
            <th scope="col">{words.pieces.coatHead}</th>
            <th scope="col">{words.pieces.liquid}</th>
            <th scope="col">{words.pieces.hands}</th>
            <th scope="col">{words.pieces.waitHead}</th>
            <th scope="col">{words.pieces.day}</th>
          </tr>
        </thead>
        <tbody>
          <For each={props.used.coats}>
            {(coat) => (
              <tr>
                <th scope="row" data-head={words.pieces.coatHead}>
                  {words.surfaces.on(String(coat.coat), coat.surface)}
                </th>
                <Beside
                  head={words.pieces.liquid}
                  planned={said(coat.plannedMl, liquid(coat))}
                  used={said(coat.usedMl, liquid(coat))}
                />
                <Beside
                  head={words.pieces.hands}
                  planned={said(coat.plannedMinutes, lengthInWords)}
                  used={said(coat.minutes, lengthInWords)}
                />
                <Beside
                  head={words.pieces.waitHead}
                  planned={said(coat.plannedWaitMinutes, lengthInWords)}
                  used={said(coat.waitedMinutes, lengthInWords)}
                  words={words.pieces.plannedAtLeast}
                />
                <Beside
                  head={words.pieces.day}
                  planned={said(coat.plannedDay, dayName)}
                  used={said(onDay(coat), dayName)}
                />
              </tr>
            )}
          </For>
        </tbody>
      </table>
    </div>
  );
}

const said = <T,>(value: T | null, inWords: (value: T) => string): string | null =>
  value === null ? null : inWords(value);

/** What came of it in bold, what was planned under it. */
const Beside = (props: {
  readonly planned: string | null;
  readonly used: string | null;
  readonly words?: (planned: string) => string;
  readonly head: string;
}) => (
  <td data-head={props.head}>
    <b>{props.used ?? words.pieces.notWritten}</b>
    <Show when={props.planned}>
      {(planned) => (
        <span class="soft small under">{(props.words ?? words.pieces.plannedWas)(planned())}</span>
      )}
    </Show>
  </td>
);

function sentence(compared: Compared, inWords: (percent: number, coats: number) => string): string {
  if (compared.coats === 0) return "";
  return inWords(Math.round((compared.used / compared.planned - 1) * 100), compared.coats);
}
