import { createSignal, Show } from "solid-js";
import type { TypedQuantity } from "../../../core/notebook/kinds/parts.ts";
import { type InstrumentView, instrumentIds, instrumentView } from "../../../core/views/material.ts";
import type { OpenBook } from "../../book-store/open-book.ts";
import { Select } from "../../controls/select.tsx";
import * as words from "../../words/words.ts";

export const instrumentsFor = (book: OpenBook, use: InstrumentView["use"]): readonly InstrumentView[] =>
  book.look("instruments", instrumentIds).flatMap((id) => {
    const instrument = book.look(`instrument:${id}`, (read) => instrumentView(read, id));
    return instrument?.use === use ? [instrument] : [];
  });

/** The surest of its kind: for a spoonful. */
export const finestOf = (list: readonly InstrumentView[]): InstrumentView | undefined =>
  [...list].sort(
    (a, b) =>
      (a.standardUncertainty?.si ?? Number.POSITIVE_INFINITY) -
      (b.standardUncertainty?.si ?? Number.POSITIVE_INFINITY),
  )[0];

/** A choice among the instruments of a kind, remembered while the form is open. */
export function useInstrument(book: OpenBook, use: InstrumentView["use"], finest = false) {
  const list = () => instrumentsFor(book, use);
  const [chosen, setChosen] = createSignal<string>();
  const id = () => chosen() ?? (finest ? finestOf(list()) : list()[0])?.id;
  return {
    list,
    id,
    choose: setChosen,
    /** The quantity with the instrument that it was read on. */
    on: (quantity: TypedQuantity): TypedQuantity => {
      const instrument = id();
      return instrument === undefined ? quantity : { ...quantity, instrument };
    },
  };
}

/** Asked only where there is a choice. */
export function InstrumentSelect(props: {
  readonly instrument: ReturnType<typeof useInstrument>;
  readonly label: string;
}) {
  return (
    <Show when={props.instrument.list().length > 1}>
      <Select
        label={props.label}
        value={props.instrument.id()}
        options={props.instrument.list().map((one) => ({
          value: one.id,
          label: words.jars.acts.instrument(one.name, one.standardUncertainty?.typed),
        }))}
        onChange={props.instrument.choose}
      />
    </Show>
  );
}
