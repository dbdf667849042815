import { Show } from "solid-js";
import { TextField } from "../../controls/text-field.tsx";
import { EveningFields } from "../../pieces/evening-fields.tsx";
import * as words from "../../words/words.ts";
import { readMinutes, type TrialEvenings } from "./trial-evenings.ts";

const t = words.trialEvenings;

/** When somebody is free, and how long things take. */
export function FreeFields(props: { readonly of: TrialEvenings; readonly onType: () => void }) {
  const draft = () => props.of.free().draft;
  return (
    <>
      <h2>{t.free}</h2>
      <EveningFields
        draft={draft()}
        firstWrong={draft().first === "" ? words.pieces.firstWrong : undefined}
        untilWrong={draft().until <= draft().from ? words.pieces.untilWrong : undefined}
        onChange={(change) => {
          props.onType();
          props.of.setFree((was) => ({ ...was, kept: null, draft: { ...was.draft, ...change } }));
        }}
      />
      <Show when={props.of.free().kept !== null}>
        <p class="soft small">{t.keptLast}</p>
      </Show>
      <div class="side-by-side">
        <TextField
          label={t.minutesPerPatch}
          inputMode="decimal"
          value={props.of.typed().patch}
          wrong={readMinutes(props.of.typed().patch) === undefined ? t.minutesWrong : undefined}
          onInput={(patch) => props.of.setTyped((was) => ({ ...was, patch }))}
        />
        <TextField
          label={t.change}
          inputMode="decimal"
          value={props.of.typed().change}
          wrong={readMinutes(props.of.typed().change) === undefined ? t.minutesWrong : undefined}
          onInput={(change) => props.of.setTyped((was) => ({ ...was, change }))}
        />
      </div>
      <p class="soft small">{t.usual}</p>
    </>
  );
}
