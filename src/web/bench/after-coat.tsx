import { Show } from "solid-js";
import { coatPath } from "../drying/place-path.ts";
import { AskHowItWent } from "../drying/was-ready.tsx";
import * as words from "../words/words.ts";
import type { JustWritten } from "./state.ts";
import type { Bench } from "./use-bench.ts";

/** While the pad is still in the hand: was the coat beneath ready? And how this one dries. */
export function AfterCoat(props: { readonly bench: Bench }) {
  return (
    <Show when={props.bench.written()} keyed>
      {(written) => <Asked written={written} />}
    </Show>
  );
}

function Asked(props: { readonly written: JustWritten }) {
  const [first] = props.written.coat.patches;
  return (
    <section class="hung stack after-coat not-on-paper">
      <Show when={props.written.coat.coat > 1}>
        <AskHowItWent
          layer={props.written.entry}
          question={words.drying.ready.beneath}
          answers={["dragged", "well", "too soon"]}
        />
      </Show>
      <Show when={first}>
        {(patch) => (
          <a
            class="press"
            href={coatPath(props.written.entry, { trial: props.written.coat.trial, patch: patch().patch })}
          >
            {words.drying.coat.see(props.written.coat.coat)}
          </a>
        )}
      </Show>
    </section>
  );
}
