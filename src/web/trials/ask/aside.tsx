import { For, Show } from "solid-js";
import type { CurvePoint } from "../../../core/design/foresight/more-of-it.ts";
import { TextField } from "../../controls/text-field.tsx";
import { withDigits } from "../../words/number.ts";
import { words } from "../../words/words.ts";
import { Curve } from "./curve.tsx";
import type { Draft } from "./draft.ts";
import { noiseOf } from "./draft.ts";
import { type Mend, missed } from "./mend.ts";
import { type Layout, takesOf } from "./plan.ts";
import { measuredLook, type Planned } from "./plan-state.ts";
import { ShowBars } from "./show-bars.tsx";

/** What the plan can show, what it cannot tell apart, and what it takes. */
export function Aside(props: {
  readonly draft: Draft;
  readonly set: (change: Partial<Draft>) => void;
  readonly planned: Planned;
  readonly layout: Layout;
  readonly mend: Mend | null;
  readonly curve: readonly CurvePoint[];
}) {
  return (
    <aside>
      <CanShow {...props} />
      <CannotTell layout={props.layout} planned={props.planned} />
      <SameThings layout={props.layout} />
      <Takes planned={props.planned} layout={props.layout} />
    </aside>
  );
}

const short = (value: number): string => withDigits(value, 2);

function CanShow(props: Parameters<typeof Aside>[0]) {
  const look = () => measuredLook(props.planned.asked);
  const reckoned = () => props.layout.smallestDifference;
  const best = () =>
    [...reckoned()].filter((s) => s.value !== null).sort((a, b) => (a.value ?? 0) - (b.value ?? 0))[0];
  return (
    <section class="hung">
      <Show
        when={look()}
        fallback={
          <>
            <h2>{words.trials.canShowOrdered}</h2>
            <p>{words.trials.canShowOrderedSays}</p>
          </>
        }
      >
        {(seen) => (
          <>
            <h2>
              <Show when={best()} keyed fallback={words.trials.canShowNothing}>
                {(one) => words.trials.canShow(short(one.value ?? 0), seen().unit, one.factor)}
              </Show>
            </h2>
            <ShowBars smallest={reckoned()} matters={seen().matters} />
            <Show when={props.planned.asked.factors.find((f) => f.levels.length > 1)}>
              {(first) => <Curve points={props.curve} factor={first().name} matters={seen().matters} />}
            </Show>
            <For each={reckoned().filter((s) => s.value === null)}>
              {(s) => <p>{words.trials.noneLeft(s.factor)}</p>}
            </For>
            <Show when={missed(props.layout, seen().matters).length > 0}>
              <p>{words.trials.wouldMiss(missed(props.layout, seen().matters), String(seen().matters))}</p>
            </Show>
            <Show when={props.mend} keyed>
              {(mend) => (
                <p>
                  {mend.of === "jars"
                    ? words.trials.jarsWould(mend.count, mend.factor)
                    : words.trials.boardsWould(mend.count, mend.factor)}{" "}
                  <button type="button" class="words" onClick={() => props.set(mend.change)}>
                    {words.trials.takeMend(mend.of, mend.count)}
                  </button>
                </p>
              )}
            </Show>
            <NoiseEditor draft={props.draft} set={props.set} matters={seen().matters} unit={seen().unit} />
          </>
        )}
      </Show>
    </section>
  );
}

function NoiseEditor(props: {
  readonly draft: Draft;
  readonly set: (change: Partial<Draft>) => void;
  readonly matters: number;
  readonly unit: string;
}) {
  const noise = () => noiseOf(props.draft, props.matters);
  const typed = (key: "patch" | "jar" | "plank") => props.draft.noise?.[key] ?? "";
  const set = (key: "patch" | "jar" | "plank", text: string) =>
    props.set({
      noise: { patch: typed("patch"), jar: typed("jar"), plank: typed("plank"), [key]: text },
    });
  return (
    <details>
      <summary>{words.trials.noiseOwn}</summary>
      <p class="small">
        {words.trials.noiseSays(short(noise().patch), short(noise().jar), short(noise().plank), props.unit)}{" "}
        <Show when={props.draft.noise === null}>{words.trials.noiseAssumed}</Show>
      </p>
      <div class="fields three">
        <For each={["patch", "jar", "plank"] as const}>
          {(key) => (
            <TextField
              label={words.trials.noiseFields[key]}
              inputMode="decimal"
              value={typed(key)}
              onInput={(text) => set(key, text)}
            />
          )}
        </For>
      </div>
    </details>
  );
}

function CannotTell(props: { readonly layout: Layout; readonly planned: Planned }) {
  const more = () => Math.round(takesOf(props.planned.asked, props.layout).millilitres);
  const oneJar = () => props.planned.asked.jarsPerLevel === 1;
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
              <b>{words.trials.cannotTell(c.term, c.with)}</b> {words.trials.cannotTellWhy(c.with)}{" "}
              {c.with === "jar" && oneJar() ? words.trials.secondJarsMend(String(more())) : ""}
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
