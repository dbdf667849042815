import { createSignal, Show } from "solid-js";
import { resinGrades } from "../../core/colour/resin-grades.ts";
import type { Body } from "../../core/notebook/kinds/all.ts";
import { Choice } from "../controls/choice.tsx";
import { QuantityField } from "../controls/quantity-field.tsx";
import { fields, readQuantity } from "../controls/read-quantity.ts";
import { Select } from "../controls/select.tsx";
import { TextField } from "../controls/text-field.tsx";
import * as words from "../words/words.ts";
import { BoughtFields, boughtAsks, useBought } from "./bought.tsx";
import { draftOfResin, emptyResin, type ResinDraft, readResin, waxes } from "./resin-draft.ts";
import { NameField, type NewProps, ShelfForm, useName } from "./shelf-form.tsx";
import { useWriting } from "./writing.ts";

const t = words.shelf;

/** Flakes onto the shelf: grade, wax, moisture, amount. */
export function NewResin(props: NewProps) {
  const old = props.old?.body as Body<"material-bought"> | undefined;
  const write = useWriting("material-bought", ["form", "name", "resin", ...boughtAsks], props.old);
  const name = useName(old?.name);
  const [draft, setDraft] = createSignal(old === undefined ? emptyResin : draftOfResin(old.resin));
  const [told, setTold] = createSignal(false);
  const bought = useBought(fields.mass, old);
  const set = (change: Partial<ResinDraft>) => setDraft({ ...draft(), ...change });
  const put = () => {
    setTold(true);
    const resin = readResin(draft(), old?.resin);
    if (!name.good() || resin === undefined || !bought.good()) return;
    const entry = write({ form: "resin", name: name.called(), resin, ...bought.body() });
    props.onWrote(name.called(), entry);
    name.setTyped("");
    setDraft(emptyResin);
    setTold(false);
    bought.clear();
  };
  return (
    <ShelfForm old={props.old} onPut={put}>
      <NameField name={name} told={told()} />
      <ResinFields draft={draft()} set={set} told={told()} />
      <BoughtFields bought={bought} hint={t.amountHint.resin} told={told()} />
    </ShelfForm>
  );
}

function ResinFields(props: {
  readonly draft: ResinDraft;
  readonly set: (change: Partial<ResinDraft>) => void;
  readonly told: boolean;
}) {
  return (
    <>
      <Select
        label={t.grade}
        empty={t.gradeEmpty}
        value={props.draft.grade}
        options={[
          ...resinGrades.map((one) => ({ value: one.grade, label: one.grade })),
          { value: "other" as const, label: t.gradeOther },
        ]}
        wrong={props.told && props.draft.grade === undefined ? t.gradeMissing : undefined}
        onChange={(grade) => props.set({ grade })}
      />
      <Show when={props.draft.grade === "other"}>
        <TextField
          label={t.gradeWords}
          value={props.draft.gradeWords}
          hint={t.gradeWordsHint}
          wrong={props.told && props.draft.gradeWords.trim() === "" ? t.gradeWordsMissing : undefined}
          onInput={(gradeWords) => props.set({ gradeWords })}
        />
      </Show>
      <Choice
        label={t.wax}
        value={props.draft.wax}
        options={waxes.map((value) => ({ value, label: t.waxes[value], says: t.waxSays[value] }))}
        onChange={(wax) => props.set({ wax })}
      />
      <Show when={props.draft.wax === "told"}>
        <QuantityField
          label={t.waxShare}
          typed={props.draft.waxShare}
          reading={readQuantity(props.draft.waxShare, fields.share)}
          hint={t.waxShareHint}
          told={props.told}
          onInput={(waxShare) => props.set({ waxShare })}
        />
      </Show>
      <QuantityField
        label={t.moisture}
        typed={props.draft.moisture}
        reading={readQuantity(props.draft.moisture, fields.share)}
        hint={t.moistureHint}
        optional
        told={props.told}
        onInput={(moisture) => props.set({ moisture })}
      />
    </>
  );
}
