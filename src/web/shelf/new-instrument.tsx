import { createSignal, Show } from "solid-js";
import { useBook } from "../book-store/use-book.tsx";
import { Choice } from "../controls/choice.tsx";
import { QuantityField } from "../controls/quantity-field.tsx";
import { fields, readQuantity } from "../controls/read-quantity.ts";
import { TextField } from "../controls/text-field.tsx";
import { words } from "../words/words.ts";
import type { NewProps } from "./bought.tsx";

const t = words.shelf;
const uses = ["scale", "jug", "hygrometer", "thermometer", "gloss-meter", "other"] as const;
type Use = (typeof uses)[number];

/** A scale, a jug, a meter, and how far it may be off. */
export function NewInstrument(props: NewProps) {
  const book = useBook();
  const [use, setUse] = createSignal<Use>("scale");
  const [name, setName] = createSignal("");
  const [good, setGood] = createSignal("");
  const [told, setTold] = createSignal(false);
  const expects = () => (use() === "jug" ? fields.volume : fields.mass);
  const hasAmount = () => use() === "scale" || use() === "jug";
  const reading = () => readQuantity(good(), expects());
  const put = () => {
    setTold(true);
    const read = reading();
    if (name().trim() === "" || (hasAmount() && good().trim() !== "" && !read.ok)) return;
    const entry = book.write({
      kind: "instrument-described",
      body: {
        use: use(),
        name: name().trim(),
        ...(hasAmount() && read.ok ? { standardUncertainty: read.value } : {}),
      },
    });
    props.onWrote(name().trim(), entry);
    setName("");
    setGood("");
    setTold(false);
  };
  return (
    <form
      class="stack"
      onSubmit={(event) => {
        event.preventDefault();
        put();
      }}
    >
      <Choice
        label={t.use}
        value={use()}
        options={uses.map((value) => ({ value, label: t.uses[value] }))}
        onChange={setUse}
      />
      <TextField
        label={t.name}
        value={name()}
        hint={t.nameHint}
        wrong={told() && name().trim() === "" ? t.nameMissing : undefined}
        onInput={setName}
      />
      <Show when={hasAmount()}>
        <QuantityField
          label={t.goodToField}
          typed={good()}
          reading={reading()}
          hint={use() === "jug" ? t.goodToHint.volume : t.goodToHint.mass}
          optional
          told={told()}
          onInput={setGood}
        />
      </Show>
      <button type="submit" class="main">
        {t.put}
      </button>
    </form>
  );
}
