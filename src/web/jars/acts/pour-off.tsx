import { batch, createSignal, Show } from "solid-js";
import { useBook } from "../../book-store/use-book.tsx";
import { Choice } from "../../controls/choice.tsx";
import { QuantityField } from "../../controls/quantity-field.tsx";
import { fields, readQuantity } from "../../controls/read-quantity.ts";
import { TextField } from "../../controls/text-field.tsx";
import * as words from "../../words/words.ts";
import { codesTaken, letterOf, nextCode } from "../codes.ts";
import { lookAtJar } from "../use-jar.ts";
import { ActForm, type ActProps } from "./act-form.tsx";
import { useVessel, VesselFields } from "./vessel.tsx";

/** Some of it poured off: into a jar of its own with a code, or into a dispenser, or away. */
export function PourOffAct(props: ActProps) {
  const book = useBook();
  const t = words.jars.acts.pourOff;
  const [amount, setAmount] = createSignal("");
  const [into, setInto] = createSignal<"jar" | "other">("jar");
  const [to, setTo] = createSignal("");
  const [told, setTold] = createSignal(false);
  const jar = () => lookAtJar(book, props.jarId);
  const vessel = useVessel(book, () => nextCode(letterOf(jar()?.code ?? ""), codesTaken(book)));
  const reading = () => readQuantity(amount(), fields.massOrVolume);
  const write = () => {
    setTold(true);
    const read = reading();
    const own = into() === "jar";
    if (!read.ok || (own && !vessel.check())) return;
    const code = vessel.code(); // asked before anything is written: the next free one is another then
    batch(() => {
      const glass = own ? vessel.write() : undefined;
      const id = book.write({
        kind: "batch-decanted",
        about: [props.jarId, ...(glass === undefined ? [] : [glass])],
        body: {
          amount: read.value,
          ...(own ? { code } : {}),
          ...(glass === undefined ? {} : { vessel: glass }),
          ...(own || to().trim() === "" ? {} : { to: to().trim() }),
        },
      });
      props.onWrote(t.wrote(read.value.typed), glass === undefined ? [id] : [id, glass]);
    });
  };
  return (
    <ActForm heading={t.heading} act={t.act} onAct={write} onLeave={props.onLeave}>
      <QuantityField
        label={t.amount}
        typed={amount()}
        reading={reading()}
        onInput={setAmount}
        hint={words.jars.acts.amountHint}
        told={told()}
      />
      <Choice
        inline
        label={t.into}
        value={into()}
        options={[
          { value: "jar", label: t.intoJar },
          { value: "other", label: t.intoOther },
        ]}
        onChange={setInto}
      />
      <Show
        when={into() === "jar"}
        fallback={<TextField label={t.to} value={to()} onInput={setTo} hint={t.toHint} />}
      >
        <VesselFields vessel={vessel} />
      </Show>
    </ActForm>
  );
}
