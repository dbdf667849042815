import { createUniqueId, Index, Show } from "solid-js";
import { type Component, components } from "../../core/solution/component.ts";
import { Choice, Wrong } from "../controls/choice.tsx";
import { Select } from "../controls/select.tsx";
import { TextField } from "../controls/text-field.tsx";
import * as words from "../words/words.ts";
import { type SheetPart, type StrengthDraft, strengthBases } from "./draft.ts";

const t = words.shelf;
const alcohols = ["ethanol", "isopropanol", "n-propanol", "methanol", "n-butanol", "isobutanol"] as const;

interface StrengthProps {
  readonly draft: StrengthDraft;
  readonly set: (change: Partial<StrengthDraft>) => void;
  readonly wrong: string | undefined;
}

/** A strength as it stands on the label, or part by part from the data sheet. */
export function StrengthFields(props: StrengthProps) {
  return (
    <>
      <Choice
        label={t.strength}
        value={props.draft.how}
        options={(["single", "sheet"] as const).map((value) => ({ value, label: t.strengths[value] }))}
        onChange={(how) => props.set({ how })}
      />
      <Show when={props.draft.how === "single"} fallback={<SheetFields {...props} />}>
        <SingleFields {...props} />
      </Show>
    </>
  );
}

function SingleFields(props: StrengthProps) {
  return (
    <>
      <Select
        label={t.component}
        value={props.draft.component}
        options={alcohols.map((value) => ({ value, label: t.componentNames[value] }))}
        onChange={(component) =>
          // Proof is of ethanol alone.
          props.set(
            component !== "ethanol" && props.draft.basis === "proof"
              ? { component, basis: "volume" }
              : { component },
          )
        }
      />
      <TextField
        label={t.percent}
        inputMode="decimal"
        value={props.draft.strength}
        hint={t.percentHint}
        wrong={props.wrong}
        onInput={(strength) => props.set({ strength })}
      />
      <Choice
        inline
        label={t.basis}
        value={props.draft.basis}
        options={strengthBases
          .filter((basis) => basis !== "proof" || props.draft.component === "ethanol")
          .map((value) => ({ value, label: t.bases[value] }))}
        onChange={(basis) => props.set({ basis })}
      />
    </>
  );
}

function SheetFields(props: StrengthProps) {
  const wrongId = createUniqueId();
  const change = (at: number, to: Partial<SheetPart>) =>
    props.set({ parts: props.draft.parts.map((part, i) => (i === at ? { ...part, ...to } : part)) });
  const unused = (): Component | undefined =>
    components.find((c) => c !== "unknown" && !props.draft.parts.some((part) => part.component === c));
  return (
    <fieldset class="stack shelf-sheet">
      <legend class="small soft">{t.sheetHint}</legend>
      <Index each={props.draft.parts}>
        {(part, i) => (
          <TextField
            label={t.share(t.componentNames[part().component])}
            inputMode="decimal"
            value={part().share}
            onInput={(share) => change(i, { share })}
          />
        )}
      </Index>
      <Wrong id={wrongId} says={props.wrong} />
      <Show when={unused() !== undefined}>
        <Select
          label={t.addPart}
          empty={t.choose}
          value={undefined}
          options={components
            .filter((c) => c !== "unknown" && !props.draft.parts.some((part) => part.component === c))
            .map((value) => ({ value, label: t.componentNames[value] }))}
          onChange={(component) => props.set({ parts: [...props.draft.parts, { component, share: "" }] })}
        />
      </Show>
      <Choice
        inline
        label={t.basis}
        value={props.draft.sheetBasis}
        options={(["mass", "volume"] as const).map((value) => ({ value, label: t.bases[value] }))}
        onChange={(sheetBasis) => props.set({ sheetBasis })}
      />
    </fieldset>
  );
}
