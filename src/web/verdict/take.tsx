import { createSignal, For, Show } from "solid-js";
import type { Trial } from "../../core/views/trial.ts";
import { Choice } from "../controls/choice.tsx";
import * as words from "../words/words.ts";

/** Taking a recipe on: most of each stands first, and each can be another. */
export function Take(props: { readonly trial: Trial; readonly recipe: Readonly<Record<string, string>> }) {
  const [own, setOwn] = createSignal<Readonly<Record<string, string>>>({});
  const taken = () => ({ ...props.recipe, ...own() });
  const varied = () => props.trial.asked.varies.filter((v) => v.appliedTo !== "plank" && v.levels.length > 1);
  const to = () =>
    `/pieces/new?trial=${props.trial.id}&recipe=${encodeURIComponent(JSON.stringify(taken()))}`;
  return (
    <Show when={varied().length > 0}>
      <section class="hung">
        <h2>{words.verdict.takeHeading}</h2>
        <p class="small soft">{words.verdict.takeSays}</p>
        <For each={varied()}>
          {(v) => (
            <Choice
              label={words.verdict.compared(v.factor)}
              options={v.levels.map((level) => ({ value: level, label: level }))}
              value={taken()[v.factor]}
              onChange={(level) => setOwn({ ...own(), [v.factor]: level })}
            />
          )}
        </For>
        <a class="press main" href={to()}>
          {words.verdict.take(words.verdict.recipe(Object.values(taken())))}
        </a>
      </section>
    </Show>
  );
}
