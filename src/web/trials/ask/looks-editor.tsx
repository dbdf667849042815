import { Index, Show } from "solid-js";
import { Select } from "../../controls/select.tsx";
import { TextField } from "../../controls/text-field.tsx";
import * as words from "../../words/words.ts";
import type { DraftLook } from "./draft.ts";
import type { EditorProps } from "./editors.tsx";
import { sayFault } from "./fault-words.ts";
import { lookKinds, lookPresets } from "./presets.ts";

/** What is looked at, and how large a difference in it would matter. */
export function LooksEditor(props: EditorProps) {
  const free = () =>
    lookKinds.filter(
      (kind) =>
        lookPresets[kind].name === "" || !props.draft.looks.some((l) => l.name === lookPresets[kind].name),
    );
  return (
    <div class="stack">
      <Index each={props.draft.looks}>{(look, i) => <OneLook {...props} look={look()} at={i} />}</Index>
      <Select
        label={words.trials.addLook}
        options={free().map((kind) => ({ value: kind, label: words.trials.lookPresets[kind] }))}
        value={undefined}
        empty=""
        onChange={(kind) => props.set({ looks: [...props.draft.looks, lookPresets[kind]] })}
        wrong={sayFault(props.faults, "looks")}
      />
    </div>
  );
}

function OneLook(props: EditorProps & { readonly look: DraftLook; readonly at: number }) {
  const set = (change: Partial<DraftLook>) =>
    props.set({ looks: props.draft.looks.map((l, i) => (i === props.at ? { ...l, ...change } : l)) });
  const wrong = (field: string) => sayFault(props.faults, `looks.${props.at}.${field}`);
  const mattersHint = () =>
    props.look.scale === "ordered"
      ? words.trials.mattersOrdered
      : props.look.mattersIsCommon
        ? words.trials.mattersCommon
        : words.trials.mattersOwn;
  return (
    <div class="fields one">
      <TextField
        label={words.trials.lookCalled}
        value={props.look.name}
        onInput={(name) => set({ name })}
        wrong={wrong("name")}
      />
      <Show
        when={props.look.scale === "measured"}
        fallback={
          <TextField
            label={words.trials.lookLevels}
            hint={words.trials.levelsHint}
            value={props.look.levels}
            onInput={(levels) => set({ levels })}
            wrong={wrong("levels")}
          />
        }
      >
        <TextField label={words.trials.lookUnit} value={props.look.unit} onInput={(unit) => set({ unit })} />
      </Show>
      <TextField
        label={words.trials.matters(props.look.unit)}
        hint={mattersHint()}
        inputMode="decimal"
        value={props.look.matters}
        onInput={(matters) => set({ matters, mattersIsCommon: false })}
        wrong={wrong("matters")}
      />
      <Show when={props.draft.looks.length > 1}>
        <button
          type="button"
          class="words"
          onClick={() => props.set({ looks: props.draft.looks.filter((_, i) => i !== props.at) })}
        >
          {words.trials.removeLook(props.look.name)}
        </button>
      </Show>
    </div>
  );
}
