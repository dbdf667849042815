import { createSignal, Show } from "solid-js";
import type { MaterialView } from "../../core/views/material.ts";
import { useBook } from "../book-store/use-book.tsx";
import { QuantityField } from "../controls/quantity-field.tsx";
import { fields, readQuantity } from "../controls/read-quantity.ts";
import * as words from "../words/words.ts";
import { PriceFields, usePrice } from "./bought.tsx";
import { priceWords } from "./material-text.ts";

const t = words.shelf;

/** What a thing costs by now: an entry of its own, so that the price once paid stays as it was. */
export function PriceForm(props: {
  readonly material: MaterialView;
  readonly onWrote: (entry: string) => void;
}) {
  const book = useBook();
  const price = usePrice();
  const [per, setPer] = createSignal("");
  const [told, setTold] = createSignal(false);
  const reading = () =>
    readQuantity(per(), props.material.form === "resin" ? fields.mass : fields.massOrVolume);
  const put = () => {
    setTold(true);
    const read = reading();
    if (!price.wanted() || !price.good() || !read.ok) return;
    const body = { price: price.value(), per: read.value };
    props.onWrote(book.write({ kind: "material-priced", about: [props.material.id], body }));
  };
  return (
    <form
      class="hung"
      onSubmit={(event) => {
        event.preventDefault();
        put();
      }}
    >
      <h2>{t.priceNew}</h2>
      <Show when={priceWords(props.material)} keyed>
        {(known) => <p class="soft">{t.priceNow(known)}</p>}
      </Show>
      <PriceFields
        label={t.priceField}
        price={price}
        missing={told() && !price.wanted() ? t.priceMissing : undefined}
      />
      <QuantityField
        label={t.pricePer}
        typed={per()}
        reading={reading()}
        hint={props.material.form === "resin" ? t.amountHint.resin : t.amountHint.solvent}
        told={told()}
        onInput={setPer}
      />
      <button type="submit" class="wide">
        {t.priceKeep}
      </button>
    </form>
  );
}
