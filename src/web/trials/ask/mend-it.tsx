import { Show } from "solid-js";
import * as words from "../../words/words.ts";
import type { Asked, Draft } from "./draft.ts";
import { changeFor } from "./draft-changes.ts";
import type { Further } from "./plan.ts";

/** The nearest plan without the worst fault of this one, to be taken with one press. */
export function MendIt(props: {
  readonly draft: Draft;
  readonly set: (change: Partial<Draft>) => void;
  readonly asked: Asked;
  readonly worst: NonNullable<Further["worst"]>;
}) {
  return (
    <section class="hung">
      <h2>{words.plan.mendHeading}</h2>
      <Show when={props.worst.mend} keyed fallback={<p>{words.plan.noMend}</p>}>
        {(mend) => {
          const n = { jars: mend.jarsPerLevel, boards: mend.boards.length / props.asked.woods.length };
          const { kind, factor } = props.worst.fault;
          return (
            <>
              <p>{words.plan.mend[mend.change](n, words.plan.mends[kind](factor))}</p>
              <button
                type="button"
                class="wide"
                onClick={() => props.set(changeFor(props.draft, props.asked, mend))}
              >
                {words.plan.take[mend.change](n)}
              </button>
            </>
          );
        }}
      </Show>
    </section>
  );
}
