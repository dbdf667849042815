import { type Accessor, createMemo, createResource, createSignal, onCleanup } from "solid-js";
import type { CurvePoint } from "../../../core/design/foresight/more-of-it.ts";
import type { Problem } from "../../../core/registry/problem.ts";
import { reckon } from "../reckoner.ts";
import { type Asked, type Draft, noiseOf, readDraft } from "./draft.ts";
import { type Mend, mended, mendsToTry, missed } from "./mend.ts";
import { curveInput, type Layout, layoutInput, type Noise } from "./plan.ts";

export interface Planned {
  readonly asked: Asked;
  readonly layout: Layout | null;
  readonly problem: Problem | null;
  readonly seed: string;
}

/** The first thing looked at that is a number: what the smallest difference is reckoned for. */
export function measuredLook(
  asked: Asked,
): { readonly name: string; readonly unit: string; readonly matters: number } | null {
  const look = asked.body.looksAt.find((l) => l.scale === "measured");
  return look?.matters === undefined
    ? null
    : { name: look.name, unit: look.unit ?? "", matters: look.matters };
}

const noiseFor = (draft: Draft, asked: Asked): Noise | undefined => {
  const look = measuredLook(asked);
  return look === null ? undefined : noiseOf(draft, look.matters);
};

const settleMs = 180;

/** The layout of what is asked, drawn again when it changes or another lot is wanted; off the page's thread. */
export function usePlan(draft: Accessor<Draft>, newSeed: () => string) {
  const reading = createMemo(() => readDraft(draft()));
  const [seed, setSeed] = createSignal(newSeed());
  const [settled, setSettled] = createSignal("");
  let timer: ReturnType<typeof setTimeout> | undefined;
  onCleanup(() => clearTimeout(timer));
  const wanted = createMemo(() => {
    const { asked } = reading();
    if (asked === null) return "";
    const text = JSON.stringify(layoutInput(asked, seed(), noiseFor(draft(), asked)));
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
      const answer = await reckon<Layout>("layout", layoutInput(asked, drawnFrom, noiseFor(draft(), asked)));
      return answer.ok
        ? { asked, layout: answer.value, problem: null, seed: drawnFrom }
        : { asked, layout: null, problem: answer.error, seed: drawnFrom };
    },
  );
  const latest = createMemo(() => (planned.state === "errored" ? null : (planned.latest ?? null)));
  const [mend] = createResource(latest, (now) => findMend(draft(), now));
  const [curve] = createResource(latest, (now) => findCurve(draft(), now));
  return {
    reading,
    planned: latest,
    curve: () => (curve.state === "ready" ? curve() : []),
    working: () => planned.loading,
    /** What is drawn is what is asked now. */
    current: () => !planned.loading && settled() === wanted(),
    mend: () => (mend.state === "ready" ? mend() : null) as Mend | null,
    drawAgain: () => setSeed(newSeed()),
  } as const satisfies Record<string, unknown> & { planned: Accessor<Planned | null> };
}

async function findCurve(draft: Draft, now: Planned): Promise<readonly CurvePoint[]> {
  const noise = noiseFor(draft, now.asked);
  if (noise === undefined || now.layout === null) return [];
  const answer = await reckon<Layout>("layout", curveInput(now.asked, now.seed, noise));
  return answer.ok ? (answer.value.responses[0]?.curve ?? []) : [];
}

async function findMend(draft: Draft, now: Planned): Promise<Mend | null> {
  const look = measuredLook(now.asked);
  if (look === null || now.layout === null) return null;
  // what was asked comes first; the wood is last among the factors
  const factor = missed(now.layout, look.matters)[0];
  if (factor === undefined) return null;
  for (const mend of mendsToTry(draft, now.asked, factor)) {
    const asked = mended(draft, mend);
    if (asked === null) continue;
    const answer = await reckon<Layout>("layout", layoutInput(asked, now.seed, noiseFor(draft, asked)));
    const shows = answer.ok ? answer.value.smallestDifference.find((s) => s.factor === factor)?.value : null;
    if (typeof shows === "number" && shows <= look.matters) return mend;
  }
  return null;
}
