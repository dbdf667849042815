import { createSignal } from "solid-js";
import type { NotebookEntry } from "../../core/notebook/entry.ts";
import type { Body } from "../../core/notebook/kinds/all.ts";
import { fields } from "../controls/read-quantity.ts";
import { TextField } from "../controls/text-field.tsx";
import { words } from "../words/words.ts";
import { BoughtFields, boughtAsks, type NewProps, useBought } from "./bought.tsx";
import { useWriting } from "./writing.ts";

const t = words.shelf;

/** Oil, dye, abrasive, a bought product: its name and what was paid. Such a thing comes here from elsewhere, to be corrected. */
export function CorrectOther(props: NewProps & { readonly old: NotebookEntry }) {
  const old = props.old.body as Body<"material-bought">;
  const write = useWriting("material-bought", ["name", ...boughtAsks], props.old);
  const [name, setName] = createSignal(old.name);
  const [told, setTold] = createSignal(false);
  const bought = useBought(fields.massOrVolume, old);
  const put = () => {
    setTold(true);
    if (name().trim() === "" || !bought.good()) return;
    props.onWrote(name().trim(), write({ form: old.form, name: name().trim(), ...bought.body() }));
  };
  return (
    <form
      class="stack"
      onSubmit={(event) => {
        event.preventDefault();
        put();
      }}
    >
      <TextField
        label={t.name}
        value={name()}
        hint={t.nameHint}
        wrong={told() && name().trim() === "" ? t.nameMissing : undefined}
        onInput={setName}
      />
      <BoughtFields bought={bought} hint={t.amountHint.solvent} told={told()} />
      <button type="submit" class="main">
        {t.keep}
      </button>
    </form>
  );
}
