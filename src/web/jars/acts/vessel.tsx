import { createSignal } from "solid-js";
import type { OpenBook } from "../../book-store/open-book.ts";
import { QuantityField } from "../../controls/quantity-field.tsx";
import { fields, readQuantity } from "../../controls/read-quantity.ts";
import { TextField } from "../../controls/text-field.tsx";
import * as words from "../../words/words.ts";
import { codesTaken } from "../codes.ts";

/** A code and a glass for a new batch, as they are being typed. */
export function useVessel(book: OpenBook, suggested: () => string, capacity = "") {
  const [code, setCode] = createSignal<string>();
  const [holds, setHolds] = createSignal(capacity);
  const [empty, setEmpty] = createSignal("");
  const [told, setTold] = createSignal(false);
  const codeNow = () => (code() ?? suggested()).trim();
  const holdsRead = () => readQuantity(holds(), fields.volume);
  const emptyRead = () => readQuantity(empty(), fields.mass);
  const fits = (text: string, ok: boolean) => text.trim() === "" || ok;
  return {
    code: codeNow,
    setCode,
    holds,
    setHolds,
    holdsRead,
    empty,
    setEmpty,
    emptyRead,
    told,
    capacity: () => {
      const read = holdsRead();
      return read.ok ? read.value.si : undefined;
    },
    codeWrong: () => {
      if (codeNow() === "") return words.jars.acts.vessel.codeMissing;
      return codesTaken(book).has(codeNow()) ? words.jars.acts.vessel.codeTaken(codeNow()) : undefined;
    },
    /** Whether all of it can be written; says what cannot. */
    check: (): boolean => {
      setTold(true);
      const taken = codeNow() === "" || codesTaken(book).has(codeNow());
      return !taken && fits(holds(), holdsRead().ok) && fits(empty(), emptyRead().ok);
    },
    /** Writes the glass down where anything is known of it; returns its id. */
    write: (): string | undefined => {
      const [capacityRead, weightRead] = [holdsRead(), emptyRead()];
      if (!capacityRead.ok && !weightRead.ok) return undefined;
      return book.write({
        kind: "vessel-described",
        body: {
          name: words.jars.acts.vessel.name(codeNow()),
          ...(capacityRead.ok ? { capacity: capacityRead.value } : {}),
          ...(weightRead.ok ? { emptyWeight: weightRead.value } : {}),
        },
      });
    },
  };
}

export function VesselFields(props: { readonly vessel: ReturnType<typeof useVessel> }) {
  const t = words.jars.acts.vessel;
  const v = () => props.vessel;
  return (
    <>
      <TextField
        label={t.code}
        value={v().code()}
        onInput={v().setCode}
        hint={t.codeHint}
        wrong={v().told() ? v().codeWrong() : undefined}
      />
      <div class="side-by-side halves">
        <QuantityField
          label={t.holds}
          typed={v().holds()}
          reading={v().holdsRead()}
          onInput={v().setHolds}
          optional
          told={v().told()}
        />
        <QuantityField
          label={t.empty}
          typed={v().empty()}
          reading={v().emptyRead()}
          onInput={v().setEmpty}
          optional
          told={v().told()}
        />
      </div>
    </>
  );
}
