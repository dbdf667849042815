import { createResource, For, Show } from "solid-js";
import { holmAdjusted } from "../../core/statistics/several/holm.ts";
import type { Trial } from "../../core/views/trial.ts";
import * as words from "../words/words.ts";
import type { Look } from "./questions.ts";
import { verdictsOn } from "./verdict-state.ts";

interface Asked {
  readonly name: string;
  readonly factor: string;
  readonly pValue: number;
}

/** Each thing looked at with each thing that varied: the chance of no difference at all. */
async function everythingAsked(trial: Trial, looks: readonly Look[]): Promise<readonly Asked[]> {
  const asked: Asked[] = [];
  for (const look of looks)
    for (const { factor, answer } of await verdictsOn(trial, look))
      if (answer.ok) asked.push({ name: look.name, factor, pValue: answer.value.pValue });
  return asked;
}

/** Where several things were looked at: what still stands when the chances of all are allowed for together. */
export function Across(props: { readonly trial: Trial; readonly looks: readonly Look[] }) {
  const [asked] = createResource(
    () => (props.looks.length > 1 ? { trial: props.trial, looks: props.looks } : false),
    ({ trial, looks }) => everythingAsked(trial, looks),
  );
  const said = () => {
    const all = asked.latest ?? [];
    const adjusted = holmAdjusted(all.map((a) => Math.min(1, Math.max(0, a.pValue))));
    return all.map(({ name, factor, pValue }, i) => {
      if ((adjusted[i] ?? 1) <= 0.05) return words.verdict.acrossHolds(name, factor);
      return pValue <= 0.05
        ? words.verdict.acrossFalls(name, factor)
        : words.verdict.acrossNone(name, factor);
    });
  };
  return (
    <Show when={said().length > 1}>
      <section class="hung">
        <h2>{words.verdict.acrossHeading}</h2>
        <p>{words.verdict.acrossSays(props.looks.length)}</p>
        <ul class="plain">
          <For each={said()}>{(line) => <li>{line}</li>}</For>
        </ul>
      </section>
    </Show>
  );
}
