import { type EveningChoice, eveningChoices } from "../../core/pieces/free-evenings.ts";
import { Choice } from "../controls/choice.tsx";
import { TextField } from "../controls/text-field.tsx";
import * as words from "../words/words.ts";

/** Evenings as they are typed: the first day, the hours, and which days of the week. */
export interface EveningDraft {
  readonly first: string;
  readonly from: string;
  readonly until: string;
  readonly which: EveningChoice;
}

/** When somebody is free. */
export function EveningFields(props: {
  readonly draft: EveningDraft;
  readonly firstWrong?: string | undefined;
  readonly untilWrong: string | undefined;
  readonly onChange: (change: Partial<EveningDraft>) => void;
}) {
  return (
    <>
      <TextField
        label={words.pieces.firstEvening}
        type="date"
        value={props.draft.first}
        wrong={props.firstWrong}
        onInput={(first) => props.onChange({ first })}
      />
      <div class="side-by-side">
        <TextField
          label={words.pieces.from}
          type="time"
          value={props.draft.from}
          onInput={(from) => props.onChange({ from })}
        />
        <TextField
          label={words.pieces.until}
          type="time"
          value={props.draft.until}
          wrong={props.untilWrong}
          onInput={(until) => props.onChange({ until })}
        />
      </div>
      <Choice
        label={words.pieces.which}
        value={props.draft.which}
        options={eveningChoices.map((value) => ({ value, label: words.pieces.choices[value] }))}
        onChange={(which) => props.onChange({ which })}
      />
    </>
  );
}
