import { Index, Show } from "solid-js";
import { isAmountField, jarFields } from "../../../core/jar-import/fields.ts";
import type { ColumnMatch } from "../../../core/jar-import/match-columns.ts";
import { dayOrders } from "../../../core/jar-import/read-day.ts";
import { unitNamed } from "../../../core/quantity/unit-table.ts";
import { ColumnHead } from "../../controls/column-head.tsx";
import { Select } from "../../controls/select.tsx";
import * as words from "../../words/words.ts";
import { asksForUnit, type Choices, chosenField, unitsOf } from "./columns.ts";

const t = words.jars.importing;

/** Each column of the list: what it is taken for, its unit where its numbers are bare, and some of its cells. */
export function ColumnFields(props: {
  readonly matches: readonly ColumnMatch[];
  readonly choices: Choices;
  readonly onChoose: (choices: Choices) => void;
}) {
  const change = (column: number, to: Partial<ColumnMatch>) =>
    props.onChoose({ ...props.choices, [column]: { ...props.choices[column], ...to } });
  const units = (match: ColumnMatch): readonly string[] => {
    const listed = match.field !== null && isAmountField(match.field) ? unitsOf[match.field] : [];
    return match.unit === null || listed.includes(match.unit) ? listed : [match.unit, ...listed];
  };
  return (
    <ol class="plain columns">
      <Index each={props.matches}>
        {(match) => (
          <li>
            <ColumnHead match={match()} />
            <Select
              label={t.is(match().header)}
              empty={t.notBrought}
              value={match().field ?? undefined}
              options={jarFields.map((value) => ({ value, label: t.fields[value] }))}
              onChange={(field) =>
                props.onChoose(chosenField(props.matches, props.choices, match().column, field))
              }
              onEmpty={() => props.onChoose(chosenField(props.matches, props.choices, match().column, null))}
            />
            <Show when={units(match()).length > 0}>
              <Select
                label={t.unit(match().header)}
                empty={t.unitInCells}
                value={match().unit ?? undefined}
                options={units(match()).map((value) => ({
                  value,
                  label: t.units[value] ?? unitNamed(value)?.symbol ?? value,
                }))}
                onChange={(unit) => change(match().column, { unit })}
                onEmpty={() => change(match().column, { unit: null })}
                wrong={asksForUnit(match()) ? t.unitAsked : undefined}
              />
            </Show>
            <Show when={match().field === "mixed"}>
              <Select
                label={t.dayOrder(match().header)}
                empty={words.jars.choose}
                value={match().dayOrder ?? undefined}
                options={dayOrders.map((value) => ({ value, label: t.dayOrders[value] }))}
                onChange={(dayOrder) => change(match().column, { dayOrder })}
                wrong={match().dayOrder === null ? t.dayOrderAsked : undefined}
              />
            </Show>
          </li>
        )}
      </Index>
    </ol>
  );
}
