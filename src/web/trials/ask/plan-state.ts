import { type Accessor, createMemo, createResource, createSignal, onCleanup } from "solid-js";
import type { Noise } from "../../../core/design/foresight/smallest-difference.ts";
import type { Problem } from "../../../core/registry/problem.ts";
import type { Trial } from "../../../core/views/trial.ts";
import { reckon } from "../reckoner.ts";
import { type Asked, type Draft, noiseOf, readDraft } from "./draft.ts";
import { type EarlierNoise, earlierNoise } from "./earlier-noise.ts";
import {
  type Further,
  furtherInput,
  type Layout,
  layoutInput,
  type MeasuredLook,
  measuredLooks,
} from "./plan.ts";

export interface Planned {
  readonly asked: Asked;
  readonly layout: Layout | null;
  readonly problem: Problem | null;
  readonly seed: string;
}

const settleMs = 180;

/** The layout of what is asked, drawn again when it changes or another lot is wanted; off the page's thread. */
export function usePlan(draft: Accessor<Draft>, newSeed: () => string, trials: Accessor<readonly Trial[]>) {
  const reading = createMemo(() => readDraft(draft()));
  const looks = createMemo(() => measuredLooks(reading().asked), undefined, {
    equals: (a, b) => JSON.stringify(a) === JSON.stringify(b),
  });
  const [earlier] = createResource(looks, async (asked) => {
    const found = await Promise.all(asked.map((look) => earlierNoise(trials(), look)));
    return new Map(asked.flatMap((look, i) => (found[i] === undefined ? [] : [[look.name, found[i]]])));
  });
  const earlierOf = (look: MeasuredLook): EarlierNoise | undefined => earlier.latest?.get(look.name);
  const noise = (look: MeasuredLook): Noise => noiseOf(draft(), look, earlierOf(look));
  const firstNoise = (): Noise | undefined => {
    const [look] = looks();
    return look === undefined ? undefined : noise(look);
  };
  const [seed, setSeed] = createSignal(newSeed());
  const [settled, setSettled] = createSignal("");
  let timer: ReturnType<typeof setTimeout> | undefined;
  onCleanup(() => clearTimeout(timer));
  const wanted = createMemo(() => {
    const { asked } = reading();
    if (asked === null) return "";
    const text = JSON.stringify(layoutInput(asked, seed(), firstNoise()));
    clearTimeout(timer);
    timer = setTimeout(() => setSettled(text), settled() === "" ? 0 : settleMs);
    return text;
  });
  const [planned] = createResource(
    () => wanted() !== "" && settled() !== "" && settled(),
    async (): Promise<Planned | null> => {
      const { asked } = reading();
      if (asked === null) return null;
      const drawnFrom = seed();
      const answer = await reckon<Layout>("layout", layoutInput(asked, drawnFrom, firstNoise()));
      return answer.ok
        ? { asked, layout: answer.value, problem: null, seed: drawnFrom }
        : { asked, layout: null, problem: answer.error, seed: drawnFrom };
    },
  );
  const latest = createMemo(() => (planned.state === "errored" ? null : (planned.latest ?? null)));
  const [further] = createResource(latest, (now) => lookFurther(now, noise));
  return {
    reading,
    planned: latest,
    noise,
    earlierOf,
    further: () => (further.state === "ready" ? further() : null),
    working: () => planned.loading,
    /** What is drawn is what is asked now. */
    current: () => !planned.loading && settled() === wanted(),
    drawAgain: () => setSeed(newSeed()),
  } as const satisfies Record<string, unknown> & { planned: Accessor<Planned | null> };
}

async function lookFurther(now: Planned, noise: (look: MeasuredLook) => Noise): Promise<Further | null> {
  if (now.layout === null) return null;
  const answer = await reckon<Further>("layout", furtherInput(now.asked, now.seed, noise));
  return answer.ok ? answer.value : null;
}
