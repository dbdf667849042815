import { createMemo, createSignal, Show } from "solid-js";
import { cutFromDryDown } from "../../../core/solution/dry-down.ts";
import { kilogram, poundsPerUsGallonFromCut } from "../../../core/units.ts";
import { useBook } from "../../book-store/use-book.tsx";
import { QuantityField } from "../../controls/quantity-field.tsx";
import { fields, readQuantity } from "../../controls/read-quantity.ts";
import { withDigits } from "../../words/number.ts";
import * as words from "../../words/words.ts";
import { lookAtJar } from "../use-jar.ts";
import { ActForm, type ActProps } from "./act-form.tsx";
import { InstrumentSelect, useInstrument } from "./instruments.tsx";

/** A spoonful weighed wet and weighed again dry: the true cut, whatever was reckoned. */
export function DryDownAct(props: ActProps) {
  const book = useBook();
  const t = words.jars.acts.dryDown;
  const [wet, setWet] = createSignal("");
  const [dry, setDry] = createSignal("");
  const [told, setTold] = createSignal(false);
  const scale = useInstrument(book, "scale", true);
  const readings = createMemo(() => ({
    wet: readQuantity(wet(), fields.mass),
    dry: readQuantity(dry(), fields.mass),
  }));
  const lighter = () => {
    const { wet: w, dry: d } = readings();
    return !w.ok || !d.ok || d.value.si < w.value.si;
  };
  const gives = () => {
    const { wet: w, dry: d } = readings();
    const composition = lookAtJar(book, props.jarId)?.composition ?? {};
    if (!w.ok || !d.ok || !lighter() || Object.keys(composition).length === 0) return undefined;
    const { cut } = cutFromDryDown(kilogram(w.value.si), kilogram(d.value.si), composition);
    return withDigits(poundsPerUsGallonFromCut(cut), 3);
  };
  const write = () => {
    setTold(true);
    const { wet: w, dry: d } = readings();
    if (!w.ok || !d.ok || !lighter()) return;
    const id = book.write({
      kind: "batch-dried-down",
      about: [props.jarId],
      body: { wet: scale.on(w.value), dry: scale.on(d.value) },
    });
    props.onWrote(t.wrote, [id]);
  };
  return (
    <ActForm heading={t.heading} act={t.act} onAct={write} onLeave={props.onLeave}>
      <p class="soft">{t.says}</p>
      <QuantityField label={t.wet} typed={wet()} reading={readings().wet} onInput={setWet} told={told()} />
      <QuantityField label={t.dry} typed={dry()} reading={readings().dry} onInput={setDry} told={told()} />
      <Show when={!lighter()}>
        <p class="wrong">{t.notLighter}</p>
      </Show>
      <InstrumentSelect instrument={scale} label={words.jars.acts.onScale} />
      <Show when={gives()} keyed>
        {(pounds) => (
          <p>
            <b>{t.gives(pounds)}</b>
          </p>
        )}
      </Show>
    </ActForm>
  );
}
