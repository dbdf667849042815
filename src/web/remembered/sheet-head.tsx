import { Show } from "solid-js";
import { useBook } from "../book-store/use-book.tsx";
import { QuantityField } from "../controls/quantity-field.tsx";
import { TextField } from "../controls/text-field.tsx";
import { now } from "../shell/now.ts";
import { whenInWords } from "../words/time.ts";
import * as words from "../words/words.ts";
import type { HeadFault, HeadRead } from "./head.ts";
import type { RememberedEvening } from "./use-evening.ts";

const t = words.remembered;

/** The blanks above the lines, as they stand on the paper: the air, and when it began and ended. */
export function SheetHead(props: {
  readonly evening: RememberedEvening;
  readonly coat: number;
  readonly head: HeadRead;
}) {
  const book = useBook();
  const draft = () => props.evening.headOf(props.coat);
  const says = (fault: HeadFault | undefined) =>
    fault === undefined ? undefined : t.fault(fault, (at) => whenInWords(at, book.zone, now()));
  return (
    <fieldset class="sheet-head-blanks">
      <legend class="unseen">{t.head(props.coat)}</legend>
      <QuantityField
        label={t.air}
        typed={draft().air}
        reading={props.head.air}
        optional
        told={props.evening.told()}
        onInput={(air) => props.evening.fillHead(props.coat, { air })}
      />
      <QuantityField
        label={t.damp}
        typed={draft().damp}
        reading={props.head.damp}
        optional
        told={props.evening.told()}
        onInput={(damp) => props.evening.fillHead(props.coat, { damp })}
      />
      <TextField
        label={t.began}
        inputMode="numeric"
        value={draft().began}
        wrong={says(props.head.faults.began)}
        onInput={(began) => props.evening.fillHead(props.coat, { began })}
      />
      <TextField
        label={t.ended}
        inputMode="numeric"
        value={draft().ended}
        wrong={says(props.head.faults.ended)}
        onInput={(ended) => props.evening.fillHead(props.coat, { ended })}
      />
      <p class="soft small">{t.headHint}</p>
      <Show when={props.evening.told() && props.head.airIsHalf}>
        <p class="wrong" role="alert">
          {t.airHalf}
        </p>
      </Show>
    </fieldset>
  );
}
