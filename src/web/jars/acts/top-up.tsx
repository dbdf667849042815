import { createSignal, Show } from "solid-js";
import { useBook } from "../../book-store/use-book.tsx";
import { QuantityField } from "../../controls/quantity-field.tsx";
import { fields, readQuantity } from "../../controls/read-quantity.ts";
import * as words from "../../words/words.ts";
import { millilitres } from "../jar-text.ts";
import { SolventSelect, useSolvent } from "../solvents.tsx";
import { lookAtJar } from "../use-jar.ts";
import { ActForm, type ActProps } from "./act-form.tsx";

/** Alcohol put back, or added on purpose. */
export function TopUpAct(props: ActProps) {
  const book = useBook();
  const t = words.jars.acts.topUp;
  const jar = () => lookAtJar(book, props.jarId);
  const solvent = useSolvent(book, () => jar()?.solvents[0]?.material ?? undefined);
  const [amount, setAmount] = createSignal("");
  const [told, setTold] = createSignal(false);
  const reading = () => readQuantity(amount(), fields.massOrVolume);
  const write = () => {
    setTold(true);
    const [read, material] = [reading(), solvent.id()];
    if (!read.ok || material === undefined) return;
    const id = book.write({
      kind: "batch-topped-up",
      about: [props.jarId, material],
      body: { added: [{ material, amount: read.value }] },
    });
    props.onWrote(t.wrote(read.value.typed), [id]);
  };
  return (
    <ActForm heading={t.heading} act={t.act} onAct={write} onLeave={props.onLeave}>
      <Show when={jar()?.lost} keyed>
        {(lost) => <p>{t.bringsBack(millilitres(lost.volume))}</p>}
      </Show>
      <QuantityField
        label={t.amount}
        typed={amount()}
        reading={reading()}
        onInput={setAmount}
        hint={t.hint}
        told={told()}
      />
      <SolventSelect solvent={solvent} told={told()} />
    </ActForm>
  );
}
