import { createSignal } from "solid-js";
import { layerSorts, methods } from "../../core/notebook/kinds/bench.ts";
import type { DueCoat, DuePatch } from "../../core/views/bench.ts";
import { jarIds, jarView } from "../../core/views/jar.ts";
import type { CoatMethod } from "../../core/views/waits.ts";
import { inTheHandsOf } from "../book-store/hands.ts";
import { useBook } from "../book-store/use-book.tsx";
import { Select } from "../controls/select.tsx";
import { TextField } from "../controls/text-field.tsx";
import * as words from "../words/words.ts";
import { codesOf, FoldedAct } from "./folded-act.tsx";
import { boardIds, targetsOf } from "./state.ts";

type Sort = (typeof layerSorts)[number];

/** A layer that the plan does not ask for, with why; a trial counts it as a departure and shows it. */
export function OutsidePlan(props: { readonly coat: DueCoat; readonly patches: readonly DuePatch[] }) {
  const book = useBook();
  const [sort, setSort] = createSignal<Sort>("coat");
  const [method, setMethod] = createSignal<CoatMethod>(props.coat.method);
  const [batch, setBatch] = createSignal<string>();
  const [why, setWhy] = createSignal("");
  const [told, setTold] = createSignal(false);
  const jars = book.view("jar-codes", (read) =>
    jarIds(read).flatMap((id) => {
      const jar = jarView(read, id);
      return jar === null || jar.emptied !== null ? [] : [{ value: id, label: jar.code }];
    }),
  );
  const missing = () => (why().trim() === "" ? words.bench.outsideWhyMissing : undefined);
  function write() {
    setTold(true);
    if (missing() !== undefined) return undefined;
    const from = batch();
    const id = book.write({
      kind: "layer-applied",
      ...inTheHandsOf(),
      about: [props.coat.trial, ...boardIds(props.patches), ...(from === undefined ? [] : [from])],
      body: {
        sort: sort(),
        targets: targetsOf(props.coat.trial, props.patches),
        from: from === undefined ? [] : [{ batch: from }],
        method: method(),
        outsidePlan: why().trim(),
      },
    });
    setWhy("");
    setTold(false);
    return { id, says: words.bench.outsideWrote(words.bench.outsideSorts[sort()], codesOf(props.patches)) };
  }
  return (
    <FoldedAct
      title={words.bench.outside}
      says={words.bench.outsideOn(codesOf(props.patches))}
      act={words.bench.outsideAct}
      patches={props.patches}
      onWrite={write}
    >
      <Select
        label={words.bench.outsideSort}
        value={sort()}
        options={layerSorts.map((value) => ({ value, label: words.bench.outsideSorts[value] }))}
        onChange={setSort}
      />
      <Select
        label={words.bench.how}
        value={method()}
        options={methods.map((value) => ({ value, label: words.bench.methods[value] }))}
        onChange={setMethod}
      />
      <Select
        label={words.bench.outsideFrom}
        empty={words.bench.outsideFromNone}
        value={batch()}
        options={jars()}
        onChange={setBatch}
        onEmpty={() => setBatch(undefined)}
      />
      <TextField
        label={words.bench.outsideWhy}
        value={why()}
        onInput={setWhy}
        wrong={told() ? missing() : undefined}
      />
    </FoldedAct>
  );
}
