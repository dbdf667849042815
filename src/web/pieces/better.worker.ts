import { calculate } from "../../core/registry/calculation.ts";
import { piecePlan } from "../../core/registry/pieces.ts";
import type { BetterAsked, BetterTold } from "./better-plan.ts";
import type { Plan } from "./draft.ts";

/** A short look first, so that ending the long one leaves something. */
const looksMs = [300, 5000];

/** Looks for a better plan of a piece off the page's thread; the page ends the worker when the person has seen enough. */
addEventListener("message", ({ data: { input } }: MessageEvent<BetterAsked>) => {
  for (const limitMs of looksMs) {
    const found = calculate(piecePlan, { ...input, limitMs });
    if (!found.ok) return postMessage({ plan: null, done: true } satisfies BetterTold); // the page says why
    const plan = found.value as Plan; // what this calculation gives
    const done = limitMs === looksMs.at(-1) || plan.provenBest === "all goals";
    postMessage({ plan, done } satisfies BetterTold);
    if (done) return;
  }
});
