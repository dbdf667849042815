import { For, Index, Match, Show, Switch } from "solid-js";
import { Choice } from "../../controls/choice.tsx";
import { Select } from "../../controls/select.tsx";
import { TextField } from "../../controls/text-field.tsx";
import * as words from "../../words/words.ts";
import { type Draft, type DraftFactor, factorKinds, factorName, offeredKinds } from "./draft.ts";
import { sayFault } from "./fault-words.ts";
import { type Fault, listOf } from "./field-reader.ts";
import { LooksEditor } from "./looks-editor.tsx";
import { factorPresets } from "./presets.ts";
import type { Blank } from "./sentence.tsx";

export interface EditorProps {
  readonly draft: Draft;
  readonly set: (change: Partial<Draft>) => void;
  readonly faults: readonly Fault[];
}

/** What opens under the sentence when one of its blanks is pressed. */
export function BlankEditor(
  props: EditorProps & { readonly blank: Blank | null; readonly onDone: () => void },
) {
  return (
    <div id="blank-editor">
      <Show when={props.blank} keyed>
        {(blank) => (
          <section class="hung editor" aria-label={words.trials.blankNames[blank]}>
            <h2>{words.trials.blankNames[blank]}</h2>
            <Switch>
              <Match when={blank === "factors"}>
                <FactorsEditor {...props} />
              </Match>
              <Match when={blank === "boards"}>
                <Fields {...props} fields={boardFields} />
                <KindEditor {...props} />
                <NeighboursEditor {...props} />
              </Match>
              <Match when={blank === "coats"}>
                <Fields {...props} fields={timeFields} />
              </Match>
              <Match when={blank === "looks"}>
                <LooksEditor {...props} />
              </Match>
            </Switch>
            <button type="button" onClick={() => props.onDone()}>
              {words.trials.done}
            </button>
          </section>
        )}
      </Show>
    </div>
  );
}

type TextKey =
  | "woods"
  | "boardsPerWood"
  | "planksPerWood"
  | "patchesPerBoard"
  | "boardLengthMm"
  | "boardWidthMm"
  | "coats"
  | "evenings"
  | "daysToJudge"
  | "millilitres";
const boardFields: readonly (readonly [TextKey, string])[] = [
  ["woods", words.trials.woods],
  ["boardsPerWood", words.trials.boardsPerWood],
  ["planksPerWood", words.trials.planksPerWood],
  ["patchesPerBoard", words.trials.patchesPerBoard],
  ["boardLengthMm", words.trials.boardLength],
  ["boardWidthMm", words.trials.boardWidth],
];
const timeFields: readonly (readonly [TextKey, string])[] = [
  ["coats", words.trials.coats],
  ["evenings", words.trials.evenings],
  ["daysToJudge", words.trials.daysToJudge],
  ["millilitres", words.trials.millilitres],
];

const hints: Partial<Record<TextKey, string>> = {
  woods: words.trials.levelsHint,
  patchesPerBoard: words.plan.sizesHint,
};

function Fields(props: EditorProps & { readonly fields: readonly (readonly [TextKey, string])[] }) {
  return (
    <div class="fields">
      <For each={props.fields}>
        {([key, label]) => (
          <TextField
            label={label}
            value={props.draft[key]}
            hint={hints[key]}
            inputMode={hints[key] === undefined ? "decimal" : "text"}
            onInput={(text) => props.set({ [key]: text })}
            wrong={sayFault(props.faults, key)}
          />
        )}
      </For>
    </div>
  );
}

/** How the boards are laid out, in what it is good for. */
function KindEditor(props: EditorProps) {
  return (
    <Choice
      label={words.plan.kind}
      options={offeredKinds.map((value) => ({ value, ...words.plan.kinds[value] }))}
      value={props.draft.kind}
      onChange={(kind) => props.set({ kind })}
    />
  );
}

/** What must not lie beside its own like; of what changes from patch to patch. */
function NeighboursEditor(props: EditorProps) {
  const within = () => props.draft.factors.filter((f) => f.appliedTo !== "board").map(factorName);
  return (
    <Show when={props.draft.kind === "every-board"}>
      <Select
        label={words.plan.neighboursDiffer}
        options={within().map((name) => ({ value: name, label: name }))}
        value={within().find((name) => name === props.draft.neighboursDiffer)}
        empty={words.plan.none}
        onChange={(neighboursDiffer) => props.set({ neighboursDiffer })}
        onEmpty={() => props.set({ neighboursDiffer: "" })}
      />
    </Show>
  );
}

function FactorsEditor(props: EditorProps) {
  const add = (kind: (typeof factorKinds)[number]) =>
    props.set({ factors: [...props.draft.factors, factorPresets[kind]] });
  const free = () =>
    factorKinds.filter((kind) => kind === "other" || !props.draft.factors.some((f) => f.kind === kind));
  return (
    <div class="stack">
      <Index each={props.draft.factors}>
        {(factor, i) => <OneFactor {...props} factor={factor()} at={i} />}
      </Index>
      <Select
        label={words.trials.addFactor}
        options={free().map((kind) => ({ value: kind, label: words.trials.factorKinds[kind] }))}
        value={undefined}
        empty=""
        onChange={add}
        wrong={sayFault(props.faults, "factors")}
      />
      <TextField
        label={words.trials.jarsPerLevel}
        hint={words.trials.jarsPerLevelHint}
        inputMode="numeric"
        value={props.draft.jarsPerLevel}
        onInput={(jarsPerLevel) => props.set({ jarsPerLevel })}
        wrong={sayFault(props.faults, "jarsPerLevel")}
      />
    </div>
  );
}

function OneFactor(props: EditorProps & { readonly factor: DraftFactor; readonly at: number }) {
  const name = () => factorName(props.factor);
  const set = (change: Partial<DraftFactor>) =>
    props.set({ factors: props.draft.factors.map((f, i) => (i === props.at ? { ...f, ...change } : f)) });
  return (
    <div class="fields one">
      <Show when={props.factor.kind === "other"}>
        <TextField
          label={words.trials.factorCalled}
          value={props.factor.name}
          onInput={(text) => set({ name: text })}
          wrong={sayFault(props.faults, `factors.${props.at}.name`)}
        />
        <Choice
          label={words.trials.sitsOn}
          options={[
            { value: "patch", label: words.trials.sitsOnPatch },
            { value: "jar", label: words.trials.sitsOnJar },
            { value: "board", label: words.trials.sitsOnBoard },
          ]}
          value={props.factor.appliedTo}
          onChange={(appliedTo) => set({ appliedTo })}
        />
      </Show>
      <TextField
        label={words.trials.levels(name())}
        hint={words.trials.levelsHint}
        value={props.factor.levels}
        onInput={(levels) => set({ levels })}
        wrong={sayFault(props.faults, `factors.${props.at}.levels`)}
      />
      <Show when={props.draft.kind === "every-board" && props.factor.appliedTo !== "board"}>
        <Select
          label={words.plan.twice(name())}
          options={listOf(props.factor.levels).map((level) => ({ value: level, label: level }))}
          value={listOf(props.factor.levels).find((level) => level === props.factor.twice)}
          empty={words.plan.none}
          onChange={(twice) => set({ twice })}
          onEmpty={() => set({ twice: "" })}
        />
      </Show>
      <Show when={props.factor.kind === "cut"}>
        <label class="tick">
          <input
            type="checkbox"
            checked={props.factor.fromOneStock}
            onChange={(e) => set({ fromOneStock: e.currentTarget.checked })}
          />
          <span>
            {words.trials.fromOneStock}
            <span class="soft small"> {words.trials.fromOneStockSays}</span>
          </span>
        </label>
      </Show>
      <Show when={props.draft.factors.length > 1}>
        <button
          type="button"
          class="words"
          onClick={() => props.set({ factors: props.draft.factors.filter((_, i) => i !== props.at) })}
        >
          {words.trials.removeFactor(name())}
        </button>
      </Show>
    </div>
  );
}
