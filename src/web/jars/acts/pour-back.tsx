import { createSignal } from "solid-js";
import { useBook } from "../../book-store/use-book.tsx";
import { QuantityField } from "../../controls/quantity-field.tsx";
import { fields, readQuantity } from "../../controls/read-quantity.ts";
import { TextField } from "../../controls/text-field.tsx";
import * as words from "../../words/words.ts";
import { ActForm, type ActProps } from "./act-form.tsx";

/** What was left in a dispenser, back into the jar: from then on a drop is tested first. */
export function PourBackAct(props: ActProps) {
  const book = useBook();
  const t = words.jars.acts.pourBack;
  const [amount, setAmount] = createSignal("");
  const [from, setFrom] = createSignal("");
  const [told, setTold] = createSignal(false);
  const reading = () => readQuantity(amount(), fields.massOrVolume);
  const write = () => {
    setTold(true);
    const read = reading();
    if (!read.ok) return;
    const id = book.write({
      kind: "leftovers-poured-back",
      about: [props.jarId],
      body: { amount: read.value, ...(from().trim() === "" ? {} : { from: from().trim() }) },
    });
    props.onWrote(t.wrote(read.value.typed), [id]);
  };
  return (
    <ActForm heading={t.heading} act={t.act} onAct={write} onLeave={props.onLeave}>
      <p class="soft">{t.says}</p>
      <QuantityField
        label={t.amount}
        typed={amount()}
        reading={reading()}
        onInput={setAmount}
        hint={words.jars.acts.amountHint}
        told={told()}
      />
      <TextField label={t.from} value={from()} onInput={setFrom} hint={t.fromHint} />
    </ActForm>
  );
}
