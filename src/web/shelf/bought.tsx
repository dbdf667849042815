import { createSignal, createUniqueId } from "solid-js";
import type { Body } from "../../core/notebook/kinds/all.ts";
import { useBook } from "../book-store/use-book.tsx";
import { Wrong } from "../controls/choice.tsx";
import { QuantityField } from "../controls/quantity-field.tsx";
import type { QuantityReading } from "../controls/quantity-reading.ts";
import { type FieldExpects, readQuantity } from "../controls/read-quantity.ts";
import { TextField } from "../controls/text-field.tsx";
import { now } from "../shell/now.ts";
import { dayOf } from "../words/time.ts";
import * as words from "../words/words.ts";
import { figure } from "./draft.ts";

const t = words.shelf;
/** The currency that was written last, offered again. */
const [currency, setCurrency] = createSignal("EUR");

/** The fields of an entry that `useBought` asks for. */
export const boughtAsks = ["amount", "lot", "price", "bought"] as const;

/** A price being typed: nothing at all is fine, a number with no currency is not. */
export function usePrice(old?: Body<"material-bought">["price"]) {
  if (old !== undefined) setCurrency(old.currency);
  const [paid, setPaid] = createSignal(old === undefined ? "" : String(old.amount));
  const wanted = () => paid().trim() !== "";
  const paidWrong = () =>
    wanted() && (Number.isNaN(figure(paid())) || paid().includes("%")) ? t.priceWrong : undefined;
  const currencyWrong = () => (wanted() && currency().trim() === "" ? t.currencyMissing : undefined);
  return {
    paid,
    setPaid,
    wanted,
    paidWrong,
    currencyWrong,
    good: () => paidWrong() === undefined && currencyWrong() === undefined,
    value: () => ({ amount: figure(paid()), currency: currency().trim() }),
  };
}

/** Amount, lot, price and day of something bought: all of it optional, none of it guessed. */
export function useBought(expects: FieldExpects, old?: Body<"material-bought">) {
  const book = useBook();
  const [amount, setAmount] = createSignal(old?.amount?.typed ?? "");
  const [lot, setLot] = createSignal(old?.lot ?? "");
  const [day, setDay] = createSignal(old?.bought ?? "");
  const price = usePrice(old?.price);
  const reading = (): QuantityReading =>
    old?.amount !== undefined && amount() === old.amount.typed
      ? { ok: true, value: old.amount } // as it was understood then, with the scale that it was read off
      : readQuantity(amount(), expects);
  const dayWrong = () => (day() > dayOf(now(), book.zone) ? t.boughtAhead : undefined);
  return {
    amount,
    setAmount,
    lot,
    setLot,
    price,
    day,
    setDay,
    reading,
    dayWrong,
    good: () =>
      (amount().trim() === "" ? !price.wanted() : reading().ok) && price.good() && dayWrong() === undefined,
    body: (): Partial<Body<"material-bought">> => {
      const read = reading();
      return {
        ...(read.ok ? { amount: read.value } : {}),
        ...(lot().trim() === "" ? {} : { lot: lot().trim() }),
        ...(price.wanted() ? { price: price.value() } : {}),
        ...(day() === "" ? {} : { bought: day() }),
      };
    },
    clear: () => {
      for (const set of [setAmount, setLot, price.setPaid, setDay]) set("");
    },
  };
}

export function BoughtFields(props: {
  readonly bought: ReturnType<typeof useBought>;
  readonly hint: string;
  readonly told: boolean;
}) {
  const { bought } = props;
  const wrongId = createUniqueId();
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
      <Wrong
        id={wrongId}
        says={
          props.told && bought.price.wanted() && bought.amount().trim() === "" ? t.amountForPrice : undefined
        }
      />
      <PriceFields label={t.paid} price={bought.price} />
      <div class="side-by-side">
        <TextField label={t.lotField} value={bought.lot()} onInput={bought.setLot} />
        <TextField
          label={t.boughtOn}
          type="date"
          value={bought.day()}
          wrong={bought.dayWrong()}
          onInput={bought.setDay}
        />
      </div>
    </>
  );
}

export function PriceFields(props: {
  readonly label: string;
  readonly price: ReturnType<typeof usePrice>;
  readonly missing?: string | undefined;
}) {
  return (
    <div class="side-by-side">
      <TextField
        label={props.label}
        inputMode="decimal"
        value={props.price.paid()}
        wrong={props.price.paidWrong() ?? props.missing}
        onInput={props.price.setPaid}
      />
      <TextField
        label={t.currency}
        value={currency()}
        wrong={props.price.currencyWrong()}
        onInput={setCurrency}
      />
    </div>
  );
}
