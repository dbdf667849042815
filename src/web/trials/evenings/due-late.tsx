import { createMemo, Show } from "solid-js";
import { dueOnClock } from "../../../core/registry/agenda-due.ts";
import type { AgendaInput } from "../../../core/registry/agenda-input.ts";
import type { ClockPlan } from "../../../core/registry/schedule-agenda.ts";
import { WhyNot } from "../../controls/why-not.tsx";
import { dayName } from "../../pieces/plan-words.ts";
import * as words from "../../words/words.ts";
import type { PlannedCoat } from "./planned.ts";

const t = words.trialEvenings;

/** What comes due when nobody is there any more, and from when that evening would have to begin; at a press it does. */
export function DueLate(props: {
  readonly input: AgendaInput;
  readonly plan: ClockPlan;
  readonly coats: readonly PlannedCoat[];
  /** By the clock on the wall. */
  readonly now: string;
  readonly onBegin: (day: string, from: string, until: string) => void;
}) {
  const first = createMemo(() => {
    const all = dueOnClock(props.input, props.plan.starts, props.now);
    return all.find(({ begin }) => begin !== null) ?? all[0];
  });
  return (
    <Show when={first()} keyed>
      {(due) => {
        const coats = props.coats.filter(({ task }) => due.tasks.includes(task));
        const day = dayName(due.from.slice(0, 10));
        const from = due.begin?.slice(11, 16);
        return (
          <WhyNot
            heading={t.dueLate(
              coats.reduce((sum, { patches }) => sum + patches, 0),
              Number(due.lastDue.slice(11, 13)),
              due.lastDue.slice(0, 16) < due.until.slice(0, 16),
            )}
            says={t.dueSays({
              coats: coats.map(({ letter, coat }) => t.block(letter, coat)),
              from: due.firstDue.slice(11, 16),
              to: due.lastDue.slice(11, 16),
              day,
              until: due.until.slice(11, 16),
            })}
            act={from === undefined ? t.dueNever : t.dueBegin(from)}
            button={from === undefined ? undefined : words.evenings.beginAt(from)}
            onPress={() => props.onBegin(due.from.slice(0, 10), from ?? "", due.until.slice(11, 16))}
          />
        );
      }}
    </Show>
  );
}
