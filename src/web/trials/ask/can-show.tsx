import { createSignal, For, Show } from "solid-js";
import type { Noise, SmallestDifference } from "../../../core/design/foresight/smallest-difference.ts";
import { Choice } from "../../controls/choice.tsx";
import { TextField } from "../../controls/text-field.tsx";
import { withDigits } from "../../words/number.ts";
import * as words from "../../words/words.ts";
import { Curve } from "./curve.tsx";
import type { Draft, NoiseTyped } from "./draft.ts";
import type { EarlierNoise } from "./earlier-noise.ts";
import { type Further, type Layout, type MeasuredLook, measuredLooks } from "./plan.ts";
import type { Planned } from "./plan-state.ts";
import { ShowBars } from "./show-bars.tsx";

interface Props {
  readonly draft: Draft;
  readonly set: (change: Partial<Draft>) => void;
  readonly planned: Planned;
  readonly layout: Layout;
  readonly further: Further | null;
  readonly noise: (look: MeasuredLook) => Noise;
  readonly earlierOf: (look: MeasuredLook) => EarlierNoise | undefined;
}

const short = (value: number): string => withDigits(value, 2);

/** The factors in which less is shown than what matters, of those that can be told at all. */
const missed = (shown: readonly SmallestDifference[], matters: number): readonly string[] =>
  shown.filter((s) => s.about === s.factor && (s.value ?? 0) > matters).map((s) => s.factor);

/** The smallest difference that the plan can show, in one of the things looked at. */
export function CanShow(props: Props) {
  const looks = () => measuredLooks(props.planned.asked);
  const [picked, setPicked] = createSignal<string>();
  const look = () => looks().find(({ name }) => name === picked()) ?? looks()[0];
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
        {(seen) => <Shown {...props} look={seen()} isFirst={seen().name === looks()[0]?.name} />}
      </Show>
      <Show when={looks().length > 1}>
        <Choice
          label={words.plan.inWhat}
          options={looks().map(({ name }) => ({ value: name, label: name }))}
          value={look()?.name}
          onChange={setPicked}
          inline
        />
      </Show>
    </section>
  );
}

function Shown(props: Props & { readonly look: MeasuredLook; readonly isFirst: boolean }) {
  const found = () => props.further?.responses.find(({ name }) => name === props.look.name);
  /** The first thing looked at comes with the layout; the others a moment later. */
  const smallest = () =>
    found()?.smallestDifference ?? (props.isFirst ? props.layout.smallestDifference : undefined);
  const best = () =>
    [...(smallest() ?? [])]
      .filter((s) => s.value !== null)
      .sort((a, b) => (a.value ?? 0) - (b.value ?? 0))[0];
  const wouldMiss = () => missed(smallest() ?? [], props.look.matters);
  return (
    <>
      <h2>
        <Show when={smallest()} fallback={words.trials.working}>
          <Show when={best()} keyed fallback={words.trials.canShowNothing}>
            {(one) => words.trials.canShow(short(one.value ?? 0), props.look.unit, one.factor)}
          </Show>
        </Show>
      </h2>
      <ShowBars smallest={smallest() ?? []} matters={props.look.matters} />
      <Show when={props.planned.asked.factors.find((f) => f.levels.length > 1)}>
        {(first) => (
          <Curve points={found()?.curve ?? []} factor={first().name} matters={props.look.matters} />
        )}
      </Show>
      <For each={smallest()?.filter((s) => s.value === null)}>
        {(s) => <p>{words.trials.noneLeft(s.factor)}</p>}
      </For>
      <Show when={wouldMiss().length > 0}>
        <p>{words.trials.wouldMiss(wouldMiss(), String(props.look.matters))}</p>
      </Show>
      <NoiseEditor {...props} />
    </>
  );
}

function NoiseEditor(props: Props & { readonly look: MeasuredLook }) {
  const noise = () => props.noise(props.look);
  const typed = (): NoiseTyped => props.draft.noises[props.look.name] ?? { patch: "", jar: "", plank: "" };
  const set = (key: keyof NoiseTyped, text: string) =>
    props.set({ noises: { ...props.draft.noises, [props.look.name]: { ...typed(), [key]: text } } });
  return (
    <details>
      <summary>{words.trials.noiseOwn}</summary>
      <p class="small">
        {words.trials.noiseSays(
          short(noise().patch),
          short(noise().jar),
          short(noise().plank),
          props.look.unit,
        )}{" "}
        <Show when={Object.values(typed()).every((text) => text === "")}>
          <Show when={props.earlierOf(props.look)} fallback={words.trials.noiseAssumed}>
            {(earlier) => words.plan.noiseEarlier(earlier().trial)}
          </Show>
        </Show>
      </p>
      <div class="fields three">
        <For each={["patch", "jar", "plank"] as const}>
          {(key) => (
            <TextField
              label={words.trials.noiseFields[key]}
              inputMode="decimal"
              value={typed()[key]}
              onInput={(text) => set(key, text)}
            />
          )}
        </For>
      </div>
    </details>
  );
}
