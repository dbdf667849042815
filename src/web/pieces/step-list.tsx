import { createEffect, Index, Show } from "solid-js";
import { coatRoles, passes, pieceWorks } from "../../core/pieces/finishing-step.ts";
import { pieceMethods } from "../../core/pieces/method-defaults.ts";
import { Choice } from "../controls/choice.tsx";
import { Select } from "../controls/select.tsx";
import { TextField } from "../controls/text-field.tsx";
import * as words from "../words/words.ts";
import { type StepDraft, type StepProblems, stepInWords, stepProblems } from "./step-draft.ts";

const t = words.finishing;

interface StepsProps {
  readonly steps: readonly StepDraft[];
  readonly onSteps: (steps: readonly StepDraft[]) => void;
  /** What the plan refuses of a step that can be read, and of the most wait after it. */
  readonly refused: (step: number) => StepProblems;
}

/** The steps of a schedule in order, each one line that opens to its numbers. */
export function StepList(props: StepsProps) {
  const put = (at: number, change: Partial<StepDraft>) =>
    props.onSteps(props.steps.map((step, i) => (i === at ? { ...step, ...change } : step)));
  const again = (at: number) =>
    props.onSteps(props.steps.flatMap((step, i) => (i === at ? [step, step] : [step])));
  return (
    <ol class="plain step-list">
      <Index each={props.steps}>
        {(step, at) => (
          <StepLine
            number={at + 1}
            step={step()}
            wrong={{ ...stepProblems(step()), ...props.refused(at) }}
            onChange={(change) => put(at, change)}
            onAgain={() => again(at)}
            onRemove={
              props.steps.length > 1 ? () => props.onSteps(props.steps.filter((_, i) => i !== at)) : undefined
            }
          />
        )}
      </Index>
    </ol>
  );
}

interface LineProps {
  readonly number: number;
  readonly step: StepDraft;
  readonly wrong: StepProblems;
  readonly onChange: (change: Partial<StepDraft>) => void;
  readonly onAgain: () => void;
  readonly onRemove: (() => void) | undefined;
}

function StepLine(props: LineProps) {
  let line!: HTMLDetailsElement;
  // Opened where something is wrong, and never closed under the hand that puts it right.
  createEffect(() => {
    if (Object.keys(props.wrong).length > 0) line.open = true;
  });
  return (
    <li>
      <details ref={line}>
        <summary>{t.step(props.number, stepInWords(props.step))}</summary>
        <div class="stack step-fields">
          <Select
            label={t.what}
            value={props.step.what}
            options={pieceWorks.map((value) => ({ value, label: t.works[value] }))}
            onChange={(what) => props.onChange({ what })}
          />
          <Show when={props.step.what === "coat"}>
            <CoatFields {...props} />
          </Show>
          <Show when={!passes(props.step.what)}>
            <TextField
              label={t.minutes}
              value={props.step.minutes}
              inputMode="decimal"
              wrong={props.wrong.minutes}
              onInput={(minutes) => props.onChange({ minutes })}
            />
          </Show>
          <WaitFields {...props} />
          <div class="side-by-side">
            <button type="button" onClick={() => props.onAgain()}>
              {t.repeat}
            </button>
            <Show when={props.onRemove} keyed>
              {(remove) => (
                <button type="button" onClick={remove}>
                  {t.remove}
                </button>
              )}
            </Show>
          </div>
        </div>
      </details>
    </li>
  );
}

function CoatFields(props: LineProps) {
  return (
    <>
      <Choice
        label={t.as}
        inline
        value={props.step.as}
        options={coatRoles.map((value) => ({ value, label: t.roles[value] }))}
        onChange={(as) => props.onChange({ as })}
      />
      <Choice
        label={words.pieces.method}
        inline
        value={props.step.method}
        options={pieceMethods.map((value) => ({ value, label: words.pieces.methods[value] }))}
        onChange={(method) => props.onChange({ method })}
      />
      <div class="side-by-side">
        <TextField
          label={words.pieces.cut}
          value={props.step.cut}
          wrong={props.wrong.cut}
          onInput={(cut) => props.onChange({ cut })}
        />
        <TextField
          label={t.times}
          value={props.step.times}
          inputMode="numeric"
          wrong={props.wrong.times}
          onInput={(times) => props.onChange({ times })}
        />
      </div>
      <TextField
        label={t.perM2}
        value={props.step.perM2}
        inputMode="decimal"
        wrong={props.wrong.perM2}
        onInput={(perM2) => props.onChange({ perM2 })}
      />
    </>
  );
}

function WaitFields(props: LineProps) {
  return (
    <>
      <div class="side-by-side">
        <TextField
          label={t.least}
          value={props.step.least}
          hint={t.waitHint}
          wrong={props.wrong.least}
          onInput={(least) => props.onChange({ least })}
        />
        <TextField
          label={t.most}
          value={props.step.most}
          hint={t.mostHint}
          wrong={props.wrong.most}
          onInput={(most) => props.onChange({ most })}
        />
      </div>
      <Choice
        label={t.next}
        inline
        value={props.step.overnight ? "overnight" : "soon"}
        options={[
          { value: "soon", label: t.nextSoon },
          { value: "overnight", label: t.nextOvernight },
        ]}
        onChange={(next) => props.onChange({ overnight: next === "overnight" })}
      />
    </>
  );
}
