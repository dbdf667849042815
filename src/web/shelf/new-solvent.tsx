import { createMemo, createSignal, Show } from "solid-js";
import type { Body } from "../../core/notebook/kinds/all.ts";
import { Cautions } from "../controls/cautions.tsx";
import { fields } from "../controls/read-quantity.ts";
import { upToDigits } from "../words/number.ts";
import * as words from "../words/words.ts";
import { BoughtFields, boughtAsks, useBought } from "./bought.tsx";
import { emptyStrength, figure, readStrength, type StrengthDraft } from "./draft.ts";
import { strengthDraftOf } from "./kept-strength.ts";
import { madeOfWords } from "./material-text.ts";
import { NameField, type NewProps, ShelfForm, useName } from "./shelf-form.tsx";
import { StrengthFields } from "./strength-fields.tsx";
import { useWriting } from "./writing.ts";

const t = words.shelf;

/** `Ethanol 95 %` where nothing else is written. */
const usualName = (draft: StrengthDraft): string =>
  draft.how === "sheet" || Number.isNaN(figure(draft.strength))
    ? ""
    : `${t.capital(t.componentNames[draft.component])} ${upToDigits(figure(draft.strength), 3)}${draft.basis === "proof" ? " proof" : " %"}`;

/** An alcohol onto the shelf, its strength as the label or the data sheet says it. */
export function NewSolvent(props: NewProps) {
  const old = props.old?.body as Body<"material-bought"> | undefined;
  const write = useWriting("material-bought", ["form", "name", "solvent", ...boughtAsks], props.old);
  const [draft, setDraft] = createSignal<StrengthDraft>(
    old === undefined ? emptyStrength : strengthDraftOf(old.solvent),
  );
  const [told, setTold] = createSignal(false);
  const bought = useBought(fields.massOrVolume, old);
  const read = createMemo(() => readStrength(draft()));
  const name = useName(old?.name, () => usualName(draft()));
  const wrong = () => {
    const found = read();
    if (found.ok || (found.fault === "empty" && !told())) return undefined;
    if (found.fault === "over 100") return t.sheetOver(upToDigits(found.sum ?? 0, 4));
    if (found.fault === "refused") return t.refused;
    if (draft().how === "sheet") return found.fault === "empty" ? t.sheetEmpty : t.sheetShare;
    return t.percentWrong(draft().strength.trim());
  };
  const put = () => {
    setTold(true);
    const found = read();
    if (!found.ok || !name.good() || !bought.good()) return;
    const entry = write({ form: "solvent", name: name.called(), solvent: found.solvent, ...bought.body() });
    props.onWrote(name.called(), entry);
    name.setTyped("");
    setDraft(emptyStrength);
    setTold(false);
    bought.clear();
  };
  return (
    <ShelfForm old={props.old} onPut={put}>
      <StrengthFields draft={draft()} set={(change) => setDraft({ ...draft(), ...change })} wrong={wrong()} />
      <div aria-live="polite">
        <Show when={read().ok && read()} keyed>
          {(found) => <p>{found.ok ? t.made(madeOfWords(found.composition)) : ""}</p>}
        </Show>
      </div>
      <Show when={read().ok && read()} keyed>
        {(found) => (found.ok ? <Cautions act="opening" liquid={found.composition} /> : null)}
      </Show>
      <NameField name={name} told={told()} />
      <BoughtFields bought={bought} hint={t.amountHint.solvent} told={told()} />
    </ShelfForm>
  );
}
