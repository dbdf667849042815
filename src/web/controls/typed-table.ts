import { createMemo, createSignal } from "solid-js";
import { type NoTable, tableOf } from "./table-of.ts";

/** A table that a person brings in: its text, what it reads as, and why it is none, which for an empty one is said once it is `told`. */
export function typedTable<Why>(noTable: Readonly<Record<NoTable, Why>>, told: () => boolean) {
  const [text, setText] = createSignal("");
  const read = createMemo(() => tableOf(text()));
  const table = () => {
    const found = read();
    return found.ok ? found.value : undefined;
  };
  const wrong = (): Why | undefined => {
    const found = read();
    return found.ok || (found.error === "empty" && !told()) ? undefined : noTable[found.error];
  };
  return { text, setText, table, wrong };
}
