import { type JSX, Show } from "solid-js";
import { AfterCoat } from "./after-coat.tsx";
import { Dock } from "./dock.tsx";
import { Due } from "./due.tsx";
import { Hands } from "./helpers.tsx";
import { Otherwise } from "./otherwise.tsx";
import { Twice } from "./twice.tsx";
import type { Bench } from "./use-bench.ts";

/** The coat that is due, what it goes on, and what can be said of it. */
export function AtHand(props: { readonly bench: Bench; readonly nothingDue: JSX.Element }) {
  return (
    <>
      <Twice bench={props.bench} />
      <Show when={props.bench.shown()} fallback={props.nothingDue}>
        {(coat) => (
          <>
            <Due bench={props.bench} coat={coat()} />
            <Dock bench={props.bench} coat={coat()} />
            <AfterCoat bench={props.bench} />
            <Hands />
            <Otherwise bench={props.bench} />
          </>
        )}
      </Show>
    </>
  );
}
