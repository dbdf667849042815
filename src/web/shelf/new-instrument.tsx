import { createSignal, Show } from "solid-js";
import type { Body } from "../../core/notebook/kinds/all.ts";
import { instrumentUses } from "../../core/notebook/kinds/materials.ts";
import { Choice } from "../controls/choice.tsx";
import { QuantityField } from "../controls/quantity-field.tsx";
import type { QuantityReading } from "../controls/quantity-reading.ts";
import { TextField } from "../controls/text-field.tsx";
import { words } from "../words/words.ts";
import type { NewProps } from "./bought.tsx";
import { isMeasuring, readGoodTo } from "./good-to.ts";
import { useWriting } from "./writing.ts";

const t = words.shelf;

/** A scale, a jug, a meter, and how far it may be off. */
export function NewInstrument(props: NewProps) {
  const old = props.old?.body as Body<"instrument-described"> | undefined;
  const write = useWriting("instrument-described", ["use", "name", "standardUncertainty"], props.old);
  const [use, setUse] = createSignal(old?.use ?? "scale");
  const [name, setName] = createSignal(old?.name ?? "");
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
    if (name().trim() === "" || (read !== undefined && good().trim() !== "" && !read.ok)) return;
    const entry = write({
      use: use(),
      name: name().trim(),
      ...(read?.ok ? { standardUncertainty: read.value } : {}),
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
        options={instrumentUses.map((value) => ({ value, label: t.uses[value] }))}
        onChange={setUse}
      />
      <TextField
        label={t.name}
        value={name()}
        hint={t.nameHint}
        wrong={told() && name().trim() === "" ? t.nameMissing : undefined}
        onInput={setName}
      />
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
      <button type="submit" class="main">
        {props.old === undefined ? t.put : t.keep}
      </button>
    </form>
  );
}
