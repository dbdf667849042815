import { createSignal } from "solid-js";
import type { Body } from "../../core/notebook/kinds/all.ts";
import { QuantityField } from "../controls/quantity-field.tsx";
import { type FieldExpects, readQuantity } from "../controls/read-quantity.ts";
import { TextField } from "../controls/text-field.tsx";
import { words } from "../words/words.ts";
import { figure } from "./draft.ts";

const t = words.shelf;
/** The currency that was written last, offered again. */
const [currency, setCurrency] = createSignal("EUR");

/** Amount, lot, price and day of something bought: all of it optional, none of it guessed. */
export function useBought(expects: FieldExpects) {
  const [amount, setAmount] = createSignal("");
  const [lot, setLot] = createSignal("");
  const [paid, setPaid] = createSignal("");
  const [day, setDay] = createSignal("");
  const reading = () => readQuantity(amount(), expects);
  const priceWrong = () => paid().trim() !== "" && Number.isNaN(figure(paid()));
  return {
    amount,
    setAmount,
    lot,
    setLot,
    paid,
    setPaid,
    day,
    setDay,
    reading,
    priceWrong,
    good: () => (amount().trim() === "" || reading().ok) && !priceWrong(),
    body: (): Partial<Body<"material-bought">> => {
      const read = reading();
      return {
        ...(read.ok ? { amount: read.value } : {}),
        ...(lot().trim() === "" ? {} : { lot: lot().trim() }),
        ...(paid().trim() === "" ? {} : { price: { amount: figure(paid()), currency: currency().trim() } }),
        ...(day() === "" ? {} : { bought: day() }),
      };
    },
    clear: () => {
      for (const set of [setAmount, setLot, setPaid, setDay]) set("");
    },
  };
}

export function BoughtFields(props: {
  readonly bought: ReturnType<typeof useBought>;
  readonly hint: string;
  readonly told: boolean;
}) {
  const { bought } = props;
  return (
    <>
      <QuantityField
        label={t.amount}
        typed={bought.amount()}
        reading={bought.reading()}
        hint={props.hint}
        optional
        told={props.told}
        onInput={bought.setAmount}
      />
      <div class="side-by-side">
        <TextField
          label={t.paid}
          inputMode="decimal"
          value={bought.paid()}
          wrong={bought.priceWrong() ? t.priceWrong : undefined}
          onInput={bought.setPaid}
        />
        <TextField label={t.currency} value={currency()} onInput={setCurrency} />
      </div>
      <div class="side-by-side">
        <TextField label={t.lotField} value={bought.lot()} onInput={bought.setLot} />
        <TextField label={t.boughtOn} type="date" value={bought.day()} onInput={bought.setDay} />
      </div>
    </>
  );
}

export interface NewProps {
  readonly onWrote: (name: string, entry: string) => void;
}
