import { createSignal } from "solid-js";
import { useBook } from "../../book-store/use-book.tsx";
import { Choice } from "../../controls/choice.tsx";
import { QuantityField } from "../../controls/quantity-field.tsx";
import { fields, readQuantity } from "../../controls/read-quantity.ts";
import { words } from "../../words/words.ts";
import { ActForm, type ActProps } from "./act-form.tsx";
import { InstrumentSelect, useInstrument } from "./instruments.tsx";

/** The jar on the scale, as it stands. */
export function WeighAct(props: ActProps) {
  const book = useBook();
  const t = words.jars.acts.weigh;
  const [gross, setGross] = createSignal("");
  const [lid, setLid] = createSignal<"with" | "without">("with");
  const [told, setTold] = createSignal(false);
  const scale = useInstrument(book, "scale");
  const reading = () => readQuantity(gross(), fields.mass);
  const write = () => {
    setTold(true);
    const read = reading();
    if (!read.ok) return;
    const id = book.write({
      kind: "batch-weighed",
      about: [props.jarId],
      body: { gross: scale.on(read.value), withLid: lid() === "with" },
    });
    props.onWrote(t.wrote(read.value.typed), [id]);
  };
  return (
    <ActForm heading={t.heading} act={t.act} onAct={write} onLeave={props.onLeave}>
      <QuantityField
        label={t.gross}
        typed={gross()}
        reading={reading()}
        onInput={setGross}
        hint={t.hint}
        told={told()}
      />
      <Choice
        inline
        label={t.lid}
        value={lid()}
        options={[
          { value: "with", label: t.withLid },
          { value: "without", label: t.withoutLid },
        ]}
        onChange={setLid}
      />
      <InstrumentSelect instrument={scale} label={words.jars.acts.onScale} />
    </ActForm>
  );
}
