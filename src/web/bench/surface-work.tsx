import { createMemo, createSignal, Show } from "solid-js";
import { surfaceWorks } from "../../core/notebook/kinds/bench.ts";
import type { DueCoat, DuePatch } from "../../core/views/bench.ts";
import { inTheHandsOf } from "../book-store/hands.ts";
import { useBook } from "../book-store/use-book.tsx";
import { Caution } from "../controls/caution.tsx";
import { Select } from "../controls/select.tsx";
import { TextField } from "../controls/text-field.tsx";
import * as words from "../words/words.ts";
import { codesOf, FoldedAct } from "./folded-act.tsx";
import { boardIds, targetsOf } from "./state.ts";
import { riskOf } from "./surface-risk.ts";

type How = (typeof surfaceWorks)[number];

/** Sanding, de-nibbing and the like, on the patches that are chosen. */
export function SurfaceWork(props: { readonly coat: DueCoat; readonly patches: readonly DuePatch[] }) {
  const book = useBook();
  const [how, setHow] = createSignal<How>("de-nibbed");
  const [using, setUsing] = createSignal("");
  const risk = createMemo(() => riskOf(book.whole(), props.coat.trial, props.patches, how()));
  function write() {
    const id = book.write({
      kind: "surface-worked",
      ...inTheHandsOf(),
      about: [props.coat.trial, ...boardIds(props.patches)],
      body: {
        targets: targetsOf(props.coat.trial, props.patches),
        how: how(),
        ...(using().trim() === "" ? {} : { with: using().trim() }),
      },
    });
    return { id, says: words.bench.surfaceWrote(words.bench.surfaceHows[how()], codesOf(props.patches)) };
  }
  return (
    <FoldedAct
      title={words.bench.surface}
      says={words.bench.surfaceOn(codesOf(props.patches))}
      act={words.bench.surfaceAct}
      patches={props.patches}
      onWrite={write}
    >
      <Select
        label={words.bench.surfaceHow}
        value={how()}
        options={surfaceWorks.map((value) => ({ value, label: words.bench.surfaceHows[value] }))}
        onChange={setHow}
      />
      <Show when={risk().goes.length + risk().may.length > 0}>
        <Caution
          says={
            risk().goes.length > 0
              ? words.film.warn(risk().goes.join(" "), true)
              : words.film.warn(risk().may.join(" "), false)
          }
        >
          {words.film.edges}
        </Caution>
      </Show>
      <TextField
        label={words.bench.surfaceWith}
        value={using()}
        onInput={setUsing}
        hint={words.bench.surfaceWithHint}
      />
    </FoldedAct>
  );
}
