import { createSignal, Show } from "solid-js";
import { grossDue } from "../../../core/views/gross-due.ts";
import { useBook } from "../../book-store/use-book.tsx";
import { QuantityField } from "../../controls/quantity-field.tsx";
import { fields, readQuantity } from "../../controls/read-quantity.ts";
import * as words from "../../words/words.ts";
import { grams } from "../jar-text.ts";
import { ActForm, type ActProps } from "./act-form.tsx";
import { InstrumentSelect, useInstrument } from "./instruments.tsx";
import { LidChoice, useLid } from "./lid.tsx";

/** The jar on the scale, as it stands, beside what it should weigh. */
export function WeighAct(props: ActProps) {
  const book = useBook();
  const t = words.jars.acts.weigh;
  const [gross, setGross] = createSignal("");
  const [told, setTold] = createSignal(false);
  const lid = useLid();
  const scale = useInstrument(book, "scale");
  const reading = () => readQuantity(gross(), fields.mass);
  const due = () =>
    book.look(`gross-due:${props.jarId}:${lid.with()}`, (read) => grossDue(read, props.jarId, lid.with()));
  /** Said once it is read off, so that the eye is not led. */
  const found = () => {
    const [read, should] = [reading(), due()];
    if (!read.ok || read.value.si === 0 || should === null) return undefined;
    return t.due(grams(should.kg), grams(Math.abs(should.kg - read.value.si)), should.kg >= read.value.si);
  };
  const write = () => {
    setTold(true);
    const read = reading();
    if (!read.ok) return;
    const id = book.write({
      kind: "batch-weighed",
      about: [props.jarId],
      body: { gross: scale.on(read.value), withLid: lid.with() },
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
      <Show when={found()} keyed>
        {(says) => <p aria-live="polite">{says}</p>}
      </Show>
      <LidChoice lid={lid} />
      <InstrumentSelect instrument={scale} label={words.jars.acts.onScale} />
    </ActForm>
  );
}
