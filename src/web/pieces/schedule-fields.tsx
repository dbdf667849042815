import { Show } from "solid-js";
import { finishingSchedules } from "../../core/pieces/finishing-schedules.ts";
import { Wrong } from "../controls/choice.tsx";
import { Select } from "../controls/select.tsx";
import * as words from "../words/words.ts";
import { AirWaits } from "./air-waits-panel.tsx";
import type { PieceDraft } from "./draft.ts";
import type { Planning } from "./planning.ts";
import { waitTyped } from "./read-wait.ts";
import type { StepProblems } from "./step-draft.ts";
import { StepList } from "./step-list.tsx";

const t = words.finishing;

/** So many coats of one recipe, or a common schedule with its steps to be edited. */
export function ScheduleFields(props: { readonly planning: Planning }) {
  const { draft, put, takeSchedule, problem } = props.planning;
  const choices = (): readonly PieceDraft["schedule"][] => [
    "plain",
    ...finishingSchedules,
    ...(draft().schedule === "kept" ? (["kept"] as const) : []),
  ];
  const refused = (step: number): StepProblems => {
    const found = problem();
    if (found?.field !== `steps[${step}].mostWaitMinutes`) return {};
    return { most: t.tooNear(waitTyped(found.limits?.min ?? 0)) };
  };
  const wrong = () => {
    const field = problem()?.field;
    if (field === "steps[0].what") return t.firstWrong;
    return field === "coats" ? t.coatsWrong : undefined;
  };
  return (
    <>
      <Select
        label={t.schedule}
        value={draft().schedule}
        options={choices().map((value) => ({ value, label: t.schedules[value] }))}
        onChange={takeSchedule}
      />
      <Show when={draft().steps} keyed={false}>
        {(steps) => (
          <>
            <p class="soft small">{t.usual}</p>
            <StepList steps={steps()} onSteps={(changed) => put({ steps: changed })} refused={refused} />
            <AirWaits
              steps={steps()}
              solvent={props.planning.input()?.solvent}
              onSteps={(changed) => put({ steps: changed })}
            />
            <Wrong id="schedule-wrong" says={wrong()} />
          </>
        )}
      </Show>
    </>
  );
}
