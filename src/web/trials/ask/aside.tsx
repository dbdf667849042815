import { For, Show } from "solid-js";
import type { Noise } from "../../../core/design/foresight/smallest-difference.ts";
import { withDigits } from "../../words/number.ts";
import * as words from "../../words/words.ts";
import { CanShow } from "./can-show.tsx";
import type { Draft } from "./draft.ts";
import type { EarlierNoise } from "./earlier-noise.ts";
import { MendIt } from "./mend-it.tsx";
import { type Further, type Layout, type MeasuredLook, takesOf } from "./plan.ts";
import type { Planned } from "./plan-state.ts";

/** What the plan can show, what it cannot tell apart, and what it takes. */
export function Aside(props: {
  readonly draft: Draft;
  readonly set: (change: Partial<Draft>) => void;
  readonly planned: Planned;
  readonly layout: Layout;
  readonly further: Further | null;
  readonly noise: (look: MeasuredLook) => Noise;
  readonly earlierOf: (look: MeasuredLook) => EarlierNoise | undefined;
}) {
  return (
    <aside>
      <CanShow {...props} />
      <CannotTell layout={props.layout} />
      <Show when={props.further?.worst} keyed>
        {(worst) => <MendIt draft={props.draft} set={props.set} asked={props.planned.asked} worst={worst} />}
      </Show>
      <SameThings layout={props.layout} />
      <Takes planned={props.planned} layout={props.layout} />
    </aside>
  );
}

function CannotTell(props: { readonly layout: Layout }) {
  return (
    <section class="hung">
      <Show
        when={props.layout.cannotTell.length > 0}
        fallback={
          <>
            <h2>{words.trials.tellsAll}</h2>
            <p>{words.trials.tellsAllSays}</p>
          </>
        }
      >
        <h2>{words.trials.cannotTellHeading}</h2>
        <For each={props.layout.cannotTell.flatMap((c) => c.with.map((w) => ({ term: c.term, with: w })))}>
          {(c) => (
            <p>
              <b>{words.trials.cannotTell(c.term, c.with)}</b> {words.trials.cannotTellWhy(c.with)}
            </p>
          )}
        </For>
      </Show>
    </section>
  );
}

/** Effects that lie upon each other, in words. */
function SameThings(props: { readonly layout: Layout }) {
  return (
    <Show when={props.layout.sameThing.length > 0}>
      <section class="hung">
        <h2>{words.plan.sameHeading}</h2>
        <For each={props.layout.sameThing.filter((s) => s.effect.length === 1)}>
          {(s) => <p>{words.trials.sentence.capital(words.plan.same(s.effect, s.with))}</p>}
        </For>
        <For each={props.layout.sameThing.filter((s) => s.effect.length > 1)}>
          {(s) => <p class="small">{words.trials.sentence.capital(words.plan.same(s.effect, s.with))}</p>}
        </For>
      </section>
    </Show>
  );
}

function Takes(props: { readonly planned: Planned; readonly layout: Layout }) {
  const takes = () => takesOf(props.planned.asked, props.layout);
  const liquid = () =>
    takes().millilitres >= 1000
      ? `${withDigits(takes().millilitres / 1000, 2)} ${words.trials.litres}`
      : `${withDigits(takes().millilitres, 2)} ${words.trials.millilitresUnit}`;
  const body = () => props.planned.asked.body;
  return (
    <section class="hung">
      <h2>{words.trials.takesHeading}</h2>
      <div class="need">
        <div>
          <b>
            {withDigits(takes().hours, 2)} {words.trials.hours}
          </b>
          <span>{words.trials.handsOn(withDigits(takes().hoursGiveOrTake, 1))}</span>
        </div>
        <div>
          <b>{body().evenings}</b>
          <span>{words.trials.eveningsThen(String(body().daysToJudge ?? 0))}</span>
        </div>
        <div>
          <b>{liquid()}</b>
          <span>{words.trials.inJars(takes().jars, withDigits(takes().millilitresPerJar, 2))}</span>
        </div>
      </div>
      <p class="small soft">{words.trials.takesSays}</p>
    </section>
  );
}
