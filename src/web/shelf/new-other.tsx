import { createSignal } from "solid-js";
import type { Body } from "../../core/notebook/kinds/all.ts";
import { materialForms } from "../../core/notebook/kinds/materials.ts";
import { Choice } from "../controls/choice.tsx";
import { fields } from "../controls/read-quantity.ts";
import { TextField } from "../controls/text-field.tsx";
import * as words from "../words/words.ts";
import { BoughtFields, boughtAsks, useBought } from "./bought.tsx";
import { NameField, type NewProps, ShelfForm, useName } from "./shelf-form.tsx";
import { useWriting } from "./writing.ts";

const t = words.shelf;
type OtherForm = Exclude<(typeof materialForms)[number], "resin" | "solvent">;
const isOther = (form: string): form is OtherForm => form !== "resin" && form !== "solvent";
export const otherForms = materialForms.filter(isOther);

/** Oil, dye, abrasive, a finish bought ready-mixed: what it is, its name and what was paid. */
export function NewOther(props: NewProps) {
  const old = props.old?.body as Body<"material-bought"> | undefined;
  const write = useWriting("material-bought", ["form", "name", "dataSheet", ...boughtAsks], props.old);
  const [form, setForm] = createSignal<OtherForm>(otherForms.find((one) => one === old?.form) ?? "dye");
  const name = useName(old?.name);
  const [sheet, setSheet] = createSignal(old?.dataSheet ?? "");
  const [told, setTold] = createSignal(false);
  const bought = useBought(fields.massOrVolume, old);
  const put = () => {
    setTold(true);
    if (!name.good() || !bought.good()) return;
    const dataSheet = sheet().trim() === "" ? {} : { dataSheet: sheet().trim() };
    props.onWrote(
      name.called(),
      write({ form: form(), name: name.called(), ...dataSheet, ...bought.body() }),
    );
    name.setTyped("");
    setSheet("");
    setTold(false);
    bought.clear();
  };
  return (
    <ShelfForm old={props.old} onPut={put}>
      <Choice
        label={t.use}
        value={form()}
        options={otherForms.map((value) => ({ value, label: t.otherForms[value] }))}
        onChange={setForm}
      />
      <NameField name={name} told={told()} />
      <BoughtFields bought={bought} hint={t.amountHint.other} told={told()} />
      <TextField label={t.dataSheet} value={sheet()} hint={t.dataSheetHint} onInput={setSheet} />
    </ShelfForm>
  );
}
