import { z } from "zod";
import { clock } from "../pieces/bench-time.ts";
import { coatRoles, pieceWorks } from "../pieces/finishing-step.ts";
import { methodDefaults, pieceMethods } from "../pieces/method-defaults.ts";
import { type PlannedStep, planPiece } from "../pieces/plan.ts";
import { provenGoals } from "../schedule/plan-agenda.ts";
import { defineCalculation } from "./calculation.ts";
import { flag, flagsAbout } from "./flag.ts";
import { examplePiece, type PieceGiven, pieceInput, pieceOf } from "./piece-input.ts";
import { mixesOf, mixOutput, recipeOf } from "./piece-mixes.ts";

const step = z.object({
  what: z.enum(pieceWorks),
  coat: z.number().nullable(),
  /** On which surface, where the piece has several. */
  surface: z.string().nullable(),
  /** Of a coat of a schedule that was given: what it is for, how it goes on, and of which cut. */
  as: z.enum(coatRoles).nullable(),
  method: z.enum(pieceMethods).nullable(),
  cutLbPerGal: z.number().nullable(),
  done: z.boolean(),
  at: z.string().nullable(),
  minutes: z.number(),
  solutionMl: z.number(),
  leastWaitMinutes: z.number(),
  mostWaitMinutes: z.number().nullable(),
});

const output = z.object({
  steps: z.array(step),
  solutionUsedMl: z.number(),
  solutionToMixMl: z.number(),
  resinG: z.number(),
  solventMl: z.number(),
  solventG: z.number(),
  /** What to mix of each cut, the spare with it, in the order in which they are needed. */
  mixes: z.array(mixOutput),
  dryUm: z.number(),
  millilitresPerM2PerCoat: z.number(),
  eveningsUsed: z.number(),
  unplacedSteps: z.number(),
  /** The goals for which no plan is better that divides long work as this one; null where none was looked for, or it is not known. */
  provenBest: z.enum(provenGoals).nullable(),
  flags: z.array(flag),
});

const input = pieceInput.extend({
  limitMs: z
    .number()
    .min(0)
    .max(60_000)
    .default(0)
    .describe(
      "how long to look for a plan that ends sooner, takes fewer evenings, or has less idle time; 0: not at all",
    ),
});

const at = ({ day, fromMinute }: PlannedStep): string | null => {
  if (day === null) return null;
  return fromMinute === null ? day : `${day}T${clock(fromMinute)}`;
};

/** What a planned coat is of: its own step where there is one, the plan's recipe otherwise. */
function coatOf(given: PieceGiven, { what, source }: PlannedStep) {
  if (what !== "coat") return { as: null, method: null, cutLbPerGal: null };
  const written = given.steps?.[source];
  return {
    as: written?.as ?? null,
    method: written?.method ?? given.method,
    cutLbPerGal: written?.cutLbPerGal ?? given.cutLbPerGal,
  };
}

export const piecePlan = defineCalculation({
  name: "piece-plan",
  purpose: "A recipe laid onto a real piece: dated steps, the liquid to mix, and the film at the end",
  input,
  output,
  run: (given) => {
    const recipe = recipeOf(given);
    const { limitMs } = given;
    const plan = planPiece(pieceOf(given, recipe), limitMs > 0 ? { steps: 1000 * limitMs } : undefined);
    const steps = plan.steps.map((s) => ({
      what: s.what,
      coat: s.coat ?? null,
      surface: s.surface ?? null,
      ...coatOf(given, s),
      done: s.done === true,
      at: at(s),
      minutes: s.minutes,
      solutionMl: s.millilitres,
      leastWaitMinutes: s.waitMinutes,
      mostWaitMinutes: s.mostWaitMinutes ?? null,
    }));
    const spared = plan.millilitresToMix / plan.millilitresUsed;
    const mixes = mixesOf(recipe, steps, spared);
    const total = (of: (mix: (typeof mixes)[number]) => number) => mixes.reduce((sum, m) => sum + of(m), 0);
    return {
      steps,
      solutionUsedMl: plan.millilitresUsed,
      solutionToMixMl: plan.millilitresToMix,
      resinG: total((m) => m.resinG),
      solventG: total((m) => m.solventG),
      solventMl: total((m) => m.solventMl),
      mixes,
      dryUm: plan.dryFilm * 1e6,
      millilitresPerM2PerCoat:
        given.steps === undefined
          ? (given.millilitresPerM2PerCoat ?? methodDefaults[given.method].litresPerM2 * 1000)
          : plan.millilitresUsed / given.areaM2 / given.coats,
      eveningsUsed: plan.eveningsUsed,
      unplacedSteps: plan.unplaced,
      provenBest: plan.provenBest,
      flags: flagsAbout(recipe.density.flags, "solvent"),
    };
  },
  sources: [
    "1604 ft² a US gallon at one mil (an identity of units)",
    "Amounts, losses and waits of padding, brushing and spraying: common practice, editable",
  ],
  example: {
    input: examplePiece,
    output: { solutionUsedMl: 300.96, solutionToMixMl: 361.15, eveningsUsed: 1, unplacedSteps: 0 },
  },
});
