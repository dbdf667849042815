import { For, Show } from "solid-js";
import { DoesNotFit } from "../controls/does-not-fit.tsx";
import type { Saying } from "../words/en/verdict.ts";
import * as words from "../words/words.ts";
import { CaliperBand } from "./caliper-band.tsx";
import { pairsTold, type VerdictAnswer } from "./questions.ts";
import { sayMore, sayPair, sayRefusal } from "./saying.ts";
import type { OneVerdict } from "./verdict-state.ts";

/** All pairs of one thing that varied: the word first, a sentence, the caliper. */
export function Comparison(props: {
  readonly verdict: OneVerdict;
  readonly scale: readonly [number, number];
  readonly how: Saying;
  readonly width: number;
  readonly beside: boolean;
}) {
  const answer = () => (props.verdict.answer.ok ? props.verdict.answer.value : null);
  const problem = () => (props.verdict.answer.ok ? null : props.verdict.answer.error);
  return (
    <section class="hung comparison">
      <h2 class="of">{words.verdict.compared(props.verdict.factor)}</h2>
      <Show when={problem()}>
        {(p) => <DoesNotFit heading={words.verdict.cannot} says={sayRefusal(p())} />}
      </Show>
      <Show when={answer()}>
        {(a) => (
          <>
            <Show when={aboutThese(a())} keyed>
              {(says) => <p>{says}</p>}
            </Show>
            <For each={pairsTold(a())}>
              {(pair) => (
                <article classList={{ beside: props.beside }}>
                  <div>
                    <h3>{words.verdict.words[pair.verdict]}</h3>
                    <p>
                      {sayPair(pair, props.how, a().matters)}{" "}
                      <Show when={pair.verdict === "unclear"}>
                        <b>{sayMore(a().moreNeeded)}</b>
                      </Show>
                    </p>
                  </div>
                  <CaliperBand
                    pair={pair}
                    matters={a().matters}
                    scale={props.scale}
                    how={props.how}
                    width={props.width}
                    says={words.verdict.drawn(
                      words.verdict.words[pair.verdict],
                      sayPair(pair, props.how, a().matters),
                    )}
                  />
                </article>
              )}
            </For>
          </>
        )}
      </Show>
    </section>
  );
}

const aboutThese = (answer: VerdictAnswer): string | null => {
  const says = words.verdict.aboutThese;
  return Object.hasOwn(says, answer.about) ? says[answer.about as keyof typeof says] : null; // it has that name
};
