import { For, Show } from "solid-js";
import { methods } from "../../core/notebook/kinds/bench.ts";
import { Choice } from "../controls/choice.tsx";
import { Select } from "../controls/select.tsx";
import { TextField } from "../controls/text-field.tsx";
import * as words from "../words/words.ts";
import { sources } from "./evening.ts";
import { dayChoices, type RememberedEvening } from "./use-evening.ts";

const t = words.remembered;

/** Which trial, which evening, which coats. */
export function Which(props: { readonly evening: RememberedEvening }) {
  const e = props.evening;
  return (
    <>
      <Show when={e.trials().length > 1}>
        <Select
          label={t.trial}
          value={e.trial()?.id}
          options={e.trials().map(({ id, asked }) => ({ value: id, label: asked.question }))}
          onChange={e.choose}
        />
      </Show>
      <Choice
        label={t.day}
        value={e.choice()}
        options={dayChoices.map((value) => ({ value, label: t.days[value] }))}
        onChange={e.setChoice}
      />
      <Show when={e.choice() === "other"}>
        <TextField
          label={t.otherDay}
          type="date"
          value={e.typedDay()}
          onInput={e.setTypedDay}
          wrong={e.told() && e.day() === undefined ? t.otherDayWrong : undefined}
        />
      </Show>
      <fieldset class="choice">
        <legend>{t.coats}</legend>
        <div class="options">
          <For each={[...new Set([...e.waiting(), ...e.ticked()])].sort((a, b) => a - b)}>
            {(coat) => (
              <label>
                <input type="checkbox" checked={e.ticked().includes(coat)} onChange={() => e.tick(coat)} />
                <span>{t.coat(coat)}</span>
              </label>
            )}
          </For>
        </div>
      </fieldset>
    </>
  );
}

/** How well the times are known, and how it went on. */
export function Known(props: { readonly evening: RememberedEvening }) {
  const e = props.evening;
  return (
    <>
      <Choice
        label={t.source}
        value={e.source()}
        options={sources.map((value) => ({ value, ...t.sources[value] }))}
        onChange={e.setSource}
      />
      <Show when={e.source() !== "sheet"}>
        <p class="soft small">{t.counts}</p>
      </Show>
      <Choice
        label={words.bench.how}
        value={e.methodNow()}
        options={methods.map((value) => ({ value, label: words.bench.methods[value] }))}
        onChange={e.setMethod}
      />
    </>
  );
}
