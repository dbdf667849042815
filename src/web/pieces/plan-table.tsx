import { For, Show } from "solid-js";
import type { ScheduleStep } from "../../core/notebook/kinds/pieces.ts";
import type { PlannedCoat } from "../../core/views/coats-on.ts";
import { lengthInWords } from "../words/time.ts";
import * as words from "../words/words.ts";
import { millilitres } from "./amount-text.ts";
import { planRows } from "./plan-rows.ts";
import { dayName } from "./plan-words.ts";

/** The steps in order, with their day, liquid and waits. On paper with blanks for a pencil. */
export function PlanTable(props: {
  readonly steps: readonly ScheduleStep[];
  readonly blanks?: boolean;
  /** What became of a coat, at the end of its row. */
  readonly doneOf?: (coat: PlannedCoat) => string | undefined;
}) {
  return (
    <table class="piece-plan">
      <thead>
        <tr>
          <th scope="col">{words.pieces.when}</th>
          <th scope="col">{words.pieces.step}</th>
          <th scope="col">{words.pieces.liquid}</th>
          <th scope="col">{words.pieces.hands}</th>
          <th scope="col">{words.pieces.waitAfter}</th>
          <Show when={props.blanks}>
            <th scope="col">{words.pieces.paperUsed}</th>
            <th scope="col">{words.pieces.paperDone}</th>
          </Show>
        </tr>
      </thead>
      <tbody>
        <For each={planRows(props.steps, props.doneOf)}>
          {(row) => (
            <tr>
              <td class="nb">
                <Show when={row.day} fallback={words.pieces.noDay}>
                  {dayName(row.day ?? "")} <b>{row.at}</b>
                </Show>
                <Show when={row.until}>
                  {(until) => <span class="until"> {words.pieces.toHour(until())}</span>}
                </Show>
              </td>
              <td>
                <b>{row.name}</b>
                <Show when={row.done}>{(done) => <span class="soft"> {done()}</span>}</Show>
              </td>
              <td class="nb">{row.millilitres === 0 ? "" : millilitres(row.millilitres)}</td>
              <td class="nb">{row.minutes > 0 ? lengthInWords(row.minutes) : ""}</td>
              <td data-before={words.pieces.waitBefore}>{row.wait}</td>
              <Show when={props.blanks}>
                <td class="blank-cell" />
                <td class="blank-cell" />
              </Show>
            </tr>
          )}
        </For>
      </tbody>
    </table>
  );
}
