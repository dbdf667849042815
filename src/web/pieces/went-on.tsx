import { createSignal, Show } from "solid-js";
import type { Body } from "../../core/notebook/kinds/all.ts";
import { asItHappened, strikesToCorrect } from "../../core/notebook/write-entry.ts";
import { unitNamed } from "../../core/quantity/unit-table.ts";
import type { CoatUsed } from "../../core/views/planned-used.ts";
import { useBook } from "../book-store/use-book.tsx";
import { QuantityField } from "../controls/quantity-field.tsx";
import { fields, readQuantity } from "../controls/read-quantity.ts";
import { Select } from "../controls/select.tsx";
import { TextField } from "../controls/text-field.tsx";
import { UndoStrip } from "../controls/undo-strip.tsx";
import * as words from "../words/words.ts";
import { coatName } from "./plan-words.ts";
import { readMinutes } from "./read-minutes.ts";

/** How much went on and how long it took, told of a coat that is on: the coat's entry, corrected. */
export function WentOn(props: { readonly coats: readonly CoatUsed[] }) {
  const book = useBook();
  const [chosen, setChosen] = createSignal<string>();
  const [amount, setAmount] = createSignal("");
  const [minutes, setMinutes] = createSignal("");
  const [told, setTold] = createSignal(false);
  const [wrote, setWrote] = createSignal<{ readonly id: string; readonly coat: string }>();
  const on = () => props.coats.filter((coat) => coat.entry !== null);
  const nameOf = (one: CoatUsed) => coatName(one.coat, one.surface);
  const coat = () => on().find((one) => nameOf(one) === chosen()) ?? on().at(-1);
  const reading = () => readQuantity(amount(), fields.massOrVolume);
  const took = () => readMinutes(minutes());
  const nothing = () => amount().trim() === "" && minutes().trim() === "";

  function write(): void {
    setTold(true);
    const [about, used, spent] = [coat(), reading(), took()];
    const current = book.whole().entry(about?.entry ?? "");
    if (about === undefined || current === undefined || nothing()) return;
    if ((amount().trim() !== "" && !used.ok) || spent === "wrong") return;
    const weighed = used.ok && unitNamed(used.value.unit)?.dimension === "mass";
    const id = book.write({
      kind: "layer-applied",
      about: [...current.about],
      strikes: strikesToCorrect(current),
      ...asItHappened(current),
      body: {
        ...(current.body as Body<"layer-applied">), // a coat's entry, by the view that named it
        ...(used.ok ? { amount: { by: weighed ? "weighings" : "jug", total: used.value } } : {}),
        ...(spent === undefined ? {} : { minutes: spent }),
      },
    });
    setWrote({ id, coat: nameOf(about) });
    setAmount("");
    setMinutes("");
    setTold(false);
  }
  function undo(id: string): void {
    book.strike([id]);
    setWrote(undefined);
  }
  return (
    <details>
      <summary>{words.pieces.wentOn}</summary>
      <div class="stack">
        <Select
          label={words.pieces.coatHead}
          value={coat() && nameOf(coat() as CoatUsed)}
          options={on().map((one) => ({ value: nameOf(one), label: nameOf(one) }))}
          onChange={setChosen}
        />
        <QuantityField
          label={words.pieces.wentOnAmount}
          typed={amount()}
          reading={reading()}
          hint={words.pieces.wentOnHint}
          optional
          told={told()}
          onInput={setAmount}
        />
        <TextField
          label={words.pieces.wentOnMinutes}
          value={minutes()}
          inputMode="numeric"
          wrong={told() && took() === "wrong" ? words.pieces.minutesWrong : undefined}
          onInput={setMinutes}
        />
        <Show when={told() && nothing()}>
          <p role="alert">{words.pieces.wentOnNothing}</p>
        </Show>
        <button type="button" onClick={write}>
          {words.pieces.wentOnAct}
        </button>
        <Show when={wrote()} keyed>
          {(last) => <UndoStrip says={words.pieces.wentOnWrote(last.coat)} onUndo={() => undo(last.id)} />}
        </Show>
      </div>
    </details>
  );
}
