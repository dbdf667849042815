import { createSignal } from "solid-js";
import { resinGrades } from "../../core/colour/resin-grades.ts";
import { useBook } from "../book-store/use-book.tsx";
import { Choice } from "../controls/choice.tsx";
import { QuantityField } from "../controls/quantity-field.tsx";
import { fields, readQuantity } from "../controls/read-quantity.ts";
import { Select } from "../controls/select.tsx";
import { TextField } from "../controls/text-field.tsx";
import { words } from "../words/words.ts";
import { BoughtFields, type NewProps, useBought } from "./bought.tsx";

const t = words.shelf;
const waxes = ["dewaxed", "waxy", "unknown"] as const;
type Wax = (typeof waxes)[number];
/** Common practice: dewaxed grades hold 0.2–1 % of wax, natural ones 3–5 %, seedlac about 5 %. */
const waxShares: Record<Wax, number | undefined> = { dewaxed: 0.005, waxy: 0.045, unknown: undefined };

/** Flakes onto the shelf: grade, wax, moisture, amount. */
export function NewResin(props: NewProps) {
  const book = useBook();
  const [name, setName] = createSignal("");
  const [grade, setGrade] = createSignal<string>();
  const [wax, setWax] = createSignal<Wax>("dewaxed");
  const [moisture, setMoisture] = createSignal("");
  const [told, setTold] = createSignal(false);
  const bought = useBought(fields.mass);
  const damp = () => readQuantity(moisture(), fields.share);
  const put = () => {
    setTold(true);
    const chosen = grade();
    const read = damp();
    if (name().trim() === "" || chosen === undefined || !bought.good()) return;
    if (moisture().trim() !== "" && !read.ok) return;
    const share = waxShares[wax()];
    const entry = book.write({
      kind: "material-bought",
      body: {
        form: "resin",
        name: name().trim(),
        resin: {
          grade: chosen,
          ...(share === undefined ? {} : { waxMassFraction: share }),
          ...(read.ok ? { moistureMassFraction: read.value.si } : {}),
        },
        ...bought.body(),
      },
    });
    props.onWrote(name().trim(), entry);
    setName("");
    setMoisture("");
    setTold(false);
    bought.clear();
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
      <Select
        label={t.grade}
        empty={t.gradeEmpty}
        value={grade()}
        options={resinGrades.map((one) => ({ value: one.grade, label: one.grade }))}
        wrong={told() && grade() === undefined ? t.gradeMissing : undefined}
        onChange={setGrade}
      />
      <Choice
        label={t.wax}
        value={wax()}
        options={waxes.map((value) => ({ value, label: t.waxes[value], says: t.waxSays[value] }))}
        onChange={setWax}
      />
      <QuantityField
        label={t.moisture}
        typed={moisture()}
        reading={damp()}
        hint={t.moistureHint}
        optional
        told={told()}
        onInput={setMoisture}
      />
      <BoughtFields bought={bought} hint={t.amountHint.resin} told={told()} />
      <button type="submit" class="main">
        {t.put}
      </button>
    </form>
  );
}
