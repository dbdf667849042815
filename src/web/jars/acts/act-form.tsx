import type { JSX } from "solid-js";
import * as words from "../../words/words.ts";

/** What every act at a jar stands in: its fields, the one thing to press, and a way out. */
export function ActForm(props: {
  readonly heading: string;
  readonly act: string;
  readonly onAct: () => void;
  readonly onLeave: () => void;
  readonly children: JSX.Element;
}) {
  return (
    <form
      class="act stack not-on-paper"
      onSubmit={(event) => {
        event.preventDefault();
        props.onAct();
      }}
    >
      <h2>{props.heading}</h2>
      {props.children}
      <button type="submit" class="main">
        {props.act}
      </button>
      <button type="button" class="words" onClick={() => props.onLeave()}>
        {words.jars.acts.leave}
      </button>
    </form>
  );
}

/** What an act is given: the jar, and what to call with the entries that it wrote. */
export interface ActProps {
  readonly jarId: string;
  readonly onWrote: (said: string, entries: readonly string[]) => void;
  readonly onLeave: () => void;
}
