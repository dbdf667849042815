import { Index, Show } from "solid-js";
import { type RoleMatch, roles } from "../../../core/trial-import/roles.ts";
import { ColumnHead } from "../../controls/column-head.tsx";
import { Select } from "../../controls/select.tsx";
import * as words from "../../words/words.ts";
import { type Choices, chosenRole } from "./state.ts";

const t = words.trialImport;
const list = words.jars.importing;
const places = ["jar", "plank", "board", "patch"] as const;

/** Each column of the table: what it is taken for, what it sat on where it varied, and some of its cells. */
export function RoleFields(props: {
  readonly matches: readonly RoleMatch[];
  readonly choices: Choices;
  readonly onChoose: (choices: Choices) => void;
}) {
  const choose = (column: number, role: RoleMatch["role"]) =>
    props.onChoose(chosenRole(props.matches, props.choices, column, role));
  return (
    <ol class="plain columns">
      <Index each={props.matches}>
        {(match) => (
          <li>
            <ColumnHead match={match()} />
            <Select
              label={list.is(match().header)}
              empty={list.notBrought}
              value={match().role ?? undefined}
              options={roles.map((value) => ({ value, label: t.roles[value] }))}
              onChange={(role) => choose(match().column, role)}
              onEmpty={() => choose(match().column, null)}
            />
            <Show when={match().role === "varies"}>
              <Select
                label={t.satOn(match().header)}
                value={match().appliedTo}
                options={places.map((value) => ({ value, label: t.places[value] }))}
                onChange={(appliedTo) =>
                  props.onChoose({
                    ...props.choices,
                    [match().column]: { ...props.choices[match().column], appliedTo },
                  })
                }
              />
            </Show>
          </li>
        )}
      </Index>
    </ol>
  );
}
