import { For, type JSX, Show } from "solid-js";
import type { ScheduleStep } from "../../core/notebook/kinds/pieces.ts";
import { coatNumbers } from "../../core/pieces/planned-evenings.ts";
import type { PlannedCoat } from "../../core/views/coats-on.ts";
import { lengthInWords } from "../words/time.ts";
import * as words from "../words/words.ts";
import { millilitres } from "./amount-text.ts";
import { dayName, stepName, waitName } from "./plan-words.ts";

/** The steps in order, with their day, liquid and waits. On paper with blanks for a pencil. */
export function PlanTable(props: {
  readonly steps: readonly ScheduleStep[];
  readonly blanks?: boolean;
  /** What stands at the end of a coat's row. */
  readonly after?: (coat: PlannedCoat) => JSX.Element;
}) {
  const coats = () => coatNumbers(props.steps);
  const amount = (ml: number | undefined) => (ml === undefined || ml === 0 ? "" : millilitres(ml));
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
        <For each={props.steps}>
          {(step, i) => (
            <tr>
              <td class="nb">
                <Show when={step.day} fallback={words.pieces.noDay}>
                  {dayName(step.day ?? "")} <b>{step.at}</b>
                </Show>
              </td>
              <td>
                <b>{stepName(step, coats().get(step))}</b>
                <Show when={coats().get(step)} keyed>
                  {(coat) => props.after?.({ coat, ...(step.surface && { surface: step.surface }) })}
                </Show>
              </td>
              <td class="nb">{amount(step.millilitres)}</td>
              <td class="nb">{(step.minutes ?? 0) > 0 ? lengthInWords(step.minutes ?? 0) : ""}</td>
              <td data-before={words.pieces.waitBefore}>{waitName(props.steps, i())}</td>
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
