import { For, Show } from "solid-js";
import type { PlannedTrial } from "../../../core/trial-import/plan-trial.ts";
import * as words from "../../words/words.ts";

const t = words.trialImport;
const mostSaid = 8;

/** What the table comes to, or everything in it that does not fit. */
export function ComesTo(props: { readonly plan: PlannedTrial }) {
  const count = (of: (p: PlannedTrial["patches"][number]) => string) =>
    new Set(props.plan.patches.map(of)).size;
  return (
    <Show
      when={props.plan.problems.length === 0}
      fallback={
        <section class="does-not-fit" role="status">
          <h2>{t.problemsHeading(props.plan.problems.length)}</h2>
          <ul class="plain problems">
            <For each={props.plan.problems.slice(0, mostSaid)}>{(p) => <li>{t.problem(p)}</li>}</For>
          </ul>
          <Show when={props.plan.problems.length > mostSaid}>
            <p>{t.more(props.plan.problems.length - mostSaid)}</p>
          </Show>
        </section>
      }
    >
      <section class="hung stack">
        <h2>{t.found}</h2>
        <p>
          <b>
            {t.comesTo(
              props.plan.patches.length,
              count((p) => p.board),
              count((p) => p.jar),
              props.plan.readings.length,
            )}
          </b>
        </p>
        <ul class="plain">
          <For each={props.plan.factors}>{(f) => <li>{t.varied(f.name, f.levels)}</li>}</For>
        </ul>
        <Show when={!props.plan.jarsToldApart && props.plan.factors.some((f) => f.appliedTo === "jar")}>
          <p>{t.oneJarEach}</p>
        </Show>
        <p class="soft">{t.nothingBlind}</p>
      </section>
    </Show>
  );
}
