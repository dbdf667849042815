import { createSignal, Show } from "solid-js";
import type { Body } from "../../core/notebook/kinds/all.ts";
import { instrumentUses } from "../../core/notebook/kinds/materials.ts";
import { Choice } from "../controls/choice.tsx";
import { QuantityField } from "../controls/quantity-field.tsx";
import type { QuantityReading } from "../controls/quantity-reading.ts";
import * as words from "../words/words.ts";
import { isMeasuring, readGoodTo } from "./good-to.ts";
import { NameField, type NewProps, ShelfForm, useName } from "./shelf-form.tsx";
import { useWriting } from "./writing.ts";

const t = words.shelf;

/** A scale, a jug, a meter, and how far it may be off. */
export function NewInstrument(props: NewProps) {
  const old = props.old?.body as Body<"instrument-described"> | undefined;
  const write = useWriting("instrument-described", ["use", "name", "standardUncertainty"], props.old);
  const [use, setUse] = createSignal(old?.use ?? "scale");
  const name = useName(old?.name);
  const [good, setGood] = createSignal(old?.standardUncertainty?.typed ?? "");
  const [told, setTold] = createSignal(false);
  const measuring = () => {
    const now = use();
    return isMeasuring(now) ? now : undefined;
  };
  const reading = (): QuantityReading | undefined => {
    const now = measuring();
    if (now === undefined) return undefined;
    const kept = old?.standardUncertainty;
    return kept !== undefined && old?.use === now && good() === kept.typed
      ? { ok: true, value: kept }
      : readGoodTo(now, good());
  };
  const put = () => {
    setTold(true);
    const read = reading();
    if (!name.good() || (read !== undefined && good().trim() !== "" && !read.ok)) return;
    const entry = write({
      use: use(),
      name: name.called(),
      ...(read?.ok ? { standardUncertainty: read.value } : {}),
    });
    props.onWrote(name.called(), entry);
    name.setTyped("");
    setGood("");
    setTold(false);
  };
  return (
    <ShelfForm old={props.old} onPut={put}>
      <Choice
        label={t.use}
        value={use()}
        options={instrumentUses.map((value) => ({ value, label: t.uses[value] }))}
        onChange={setUse}
      />
      <NameField name={name} told={told()} />
      <Show when={measuring()} keyed>
        {(now) => (
          <QuantityField
            label={t.goodToField}
            typed={good()}
            reading={reading() ?? readGoodTo(now, good())}
            hint={t.goodToHint[now]}
            optional
            told={told()}
            onInput={setGood}
          />
        )}
      </Show>
    </ShelfForm>
  );
}
