import { z } from "zod";
import { screenOfPlan } from "../design/arrange/arrange-screen.ts";
import { cannotTell } from "../design/foresight/cannot-tell.ts";
import {
  type CurvePoint,
  differenceCurve,
  faultKinds,
  worstFaultMended,
} from "../design/foresight/more-of-it.ts";
import { replicatesOf } from "../design/foresight/replicates.ts";
import { sameThings } from "../design/foresight/same-thing.ts";
import { type SmallestDifference, smallestDifferences } from "../design/foresight/smallest-difference.ts";
import { stagesFor } from "../design/foresight/stages.ts";
import { trialTakes } from "../design/foresight/takes.ts";
import { layOut } from "../design/layout.ts";
import { type Factor, layoutKinds, type Plan } from "../design/plan.ts";
import { defineCalculation } from "./calculation.ts";

const pattern = z.record(z.string(), z.string());
const pair = z.tuple([z.string().min(1), z.string().min(1)]);

const noise = z.strictObject({
  patch: z.number().positive(),
  jar: z.number().min(0).default(0),
  plank: z.number().min(0).default(0),
});

const input = z.strictObject({
  kind: z.enum(layoutKinds).optional(),
  factors: z
    .array(
      z.strictObject({
        name: z.string().min(1),
        levels: z.array(z.string().min(1)).min(1),
        appliedTo: z.enum(["jar", "plank", "board", "patch"]),
        fromOneStock: z.boolean().optional(),
      }),
    )
    .min(1),
  jarsPerLevel: z.int().min(1).max(20).default(1),
  boards: z
    .array(
      z.strictObject({
        board: z.string().min(1),
        plank: z.string().min(1),
        wood: z.string().min(1),
        patches: z.int().min(1).max(192),
      }),
    )
    .min(1),
  forbidden: z.array(pattern).default([]),
  neighboursForbidden: z.array(z.tuple([pattern, pattern])).default([]),
  moreOften: z
    .array(z.strictObject({ what: pattern, times: z.int().min(2).max(10) }))
    .optional()
    .describe("what stands so many times as often as the rest, as a control does"),
  together: z.array(pair).optional(),
  sessions: z.int().min(1).max(100).default(1),
  noise: noise.optional(),
  responses: z
    .array(z.strictObject({ name: z.string().min(1), noise, matters: z.number().positive().optional() }))
    .optional(),
  curve: z.boolean().default(false),
  work: z
    .strictObject({
      coats: z.int().min(1).max(100),
      responses: z.int().min(1).max(100).default(1),
      millilitresPerPatchCoat: z.number().positive(),
      eveningHours: z.number().positive().default(2),
    })
    .optional(),
  seed: z.string().min(1),
});

const shown = z.looseObject({
  factor: z.string(),
  value: z.number().nullable(),
  power: z.number(),
  about: z.string(),
  degreesOfFreedom: z.number(),
});

const output = z.looseObject({
  kind: z.string(),
  patches: z.array(
    z.looseObject({
      patch: z.string(),
      board: z.string(),
      place: z.int(),
      treatment: z.record(z.string(), z.string()),
      jar: z.string(),
      code: z.string(),
      order: z.array(z.int()),
    }),
  ),
  replicates: z.array(
    z.looseObject({ factor: z.string(), unit: z.string(), times: z.int(), patches: z.int() }),
  ),
  cannotTell: z.array(z.looseObject({ term: z.string(), with: z.array(z.string()) })),
  sameThing: z.array(z.looseObject({ effect: z.array(z.string()), with: z.array(z.array(z.string())) })),
  smallestDifference: z.array(shown),
  responses: z.array(
    z.looseObject({
      name: z.string(),
      smallestDifference: z.array(shown),
      curve: z.array(z.looseObject({})),
    }),
  ),
  worst: z.looseObject({}).nullable(),
  stages: z.array(z.looseObject({ stage: z.string() })),
});

type Input = z.output<typeof input>;

const factorOf = (f: Input["factors"][number]): Factor => ({
  name: f.name,
  levels: f.levels,
  appliedTo: f.appliedTo,
  ...(f.fromOneStock === undefined ? {} : { fromOneStock: f.fromOneStock }),
});

/** The plan in a calculation's input, without lot and noise. */
export const planOf = (given: Input): Plan => ({
  ...(given.kind === undefined ? {} : { kind: given.kind }),
  ...(given.together === undefined ? {} : { together: given.together }),
  ...(given.moreOften === undefined ? {} : { moreOften: given.moreOften }),
  factors: given.factors.map(factorOf),
  jarsPerLevel: given.jarsPerLevel,
  boards: given.boards,
  forbidden: given.forbidden,
  neighboursForbidden: given.neighboursForbidden,
  sessions: given.sessions,
});

type Patches = ReturnType<typeof layOut>;

const shownOf = ({ standardError, ...rest }: SmallestDifference) => ({
  ...rest,
  standardError: Number.isFinite(standardError) ? standardError : null,
});

const pointOf = ({ smallestDifference, ...point }: CurvePoint) => ({
  ...point,
  smallestDifference: smallestDifference.map(shownOf),
});

function responsesOf(plan: Plan, patches: Patches, given: Input) {
  return (given.responses ?? []).map((r) => ({
    name: r.name,
    ...(r.matters === undefined ? {} : { matters: r.matters }),
    smallestDifference: smallestDifferences(plan, patches, r.noise).map(shownOf),
    curve: given.curve ? differenceCurve(plan, r.noise).map(pointOf) : [],
  }));
}

/** The worst fault over all that is looked at: what cannot be told is the same for all, what is missed is not. */
function worstOf(plan: Plan, patches: Patches, given: Input) {
  const looks = (given.responses ?? []).map((r) => ({
    response: r.name,
    noise: r.noise,
    matters: r.matters ?? null,
  }));
  const found = (looks.length > 0 ? looks : [{ response: null, noise: null, matters: null }]).flatMap(
    (look) => {
      const worst = worstFaultMended(plan, patches, look.noise, look.matters);
      return worst === null ? [] : [{ response: look.response, ...worst }];
    },
  );
  const [worst] = found.sort((a, b) => faultKinds.indexOf(a.fault.kind) - faultKinds.indexOf(b.fault.kind));
  if (worst === undefined) return null;
  return {
    ...(worst.response === null ? {} : { response: worst.response }),
    fault: { ...worst.fault, with: [...worst.fault.with] },
    mend: worst.mend === null ? null : { ...worst.mend, boards: worst.mend.boards.map((b) => ({ ...b })) },
  };
}

function takesOf(patches: Patches, work: NonNullable<Input["work"]>) {
  const { eveningHours, ...told } = work;
  const takes = trialTakes({
    ...told,
    patches: patches.length,
    jars: new Set(patches.map((p) => p.jar)).size,
  });
  return { ...takes, evenings: Math.max(work.coats, Math.ceil(takes.hours / eveningHours)) };
}

function screened(plan: Plan) {
  if (plan.kind !== "screen") return {};
  const { runs, fraction, generators } = screenOfPlan(plan);
  return { screen: { runs: runs.length, generators, resolution: fraction?.resolution ?? null } };
}

/** A fair layout with what it can show and what it cannot tell apart. */
export const layoutCalculation = defineCalculation({
  name: "layout",
  purpose:
    "Deal recipes to patches by lot, with codes and orders, and say what the layout can and cannot tell",
  input,
  output,
  run: (given) => {
    const plan = planOf(given);
    const patches = layOut(plan, given.seed);
    return {
      kind: plan.kind ?? "every-board",
      patches: patches.map((p) => ({ ...p, order: [...p.order] })),
      replicates: replicatesOf(plan, patches).map((r) => ({ ...r })),
      cannotTell: cannotTell(plan, patches).map((c) => ({ term: c.term, with: [...c.with] })),
      sameThing: sameThings(plan, patches).map((s) => ({
        effect: [...s.effect],
        with: s.with.map((w) => [...w]),
      })),
      smallestDifference:
        given.noise === undefined ? [] : smallestDifferences(plan, patches, given.noise).map(shownOf),
      responses: responsesOf(plan, patches, given),
      worst: worstOf(plan, patches, given),
      stages: (stagesFor(plan) ?? []).map((s) => ({ ...s })),
      ...screened(plan),
      ...(given.work === undefined ? {} : { takes: takesOf(patches, given.work) }),
    };
  },
  sources: [
    "R. A. Fisher, The Design of Experiments (1935), ch. IV: randomised blocks",
    "J. A. Eccleston and A. Hedayat, Ann. Statist. 2 (1974) 1238: (M,S)-optimal incomplete blocks",
    "R. A. Bailey, Design of Comparative Experiments (2008): strata, aliasing",
    "M. T. Jacobson and P. Matthews, J. Combin. Des. 4 (1996) 405; R. C. Bose, S. S. Shrikhande and E. T. Parker, Canad. J. Math. 12 (1960) 189: squares",
    "H. Hanani, Discrete Math. 11 (1975) 255; E. S. Kramer and D. M. Mesner, Discrete Math. 15 (1976) 263: even pairs",
    "R. L. Plackett and J. P. Burman, Biometrika 33 (1946) 305; A. Fries and W. G. Hunter, Technometrics 22 (1980) 601: screens",
    "R. K. Meyer and C. J. Nachtsheim, Technometrics 37 (1995) 60: the patches that tell most",
  ],
  example: {
    input: {
      factors: [
        { name: "alcohol", levels: ["ethanol", "isopropanol"], appliedTo: "jar" },
        { name: "wood", levels: ["cherry"], appliedTo: "plank" },
      ],
      jarsPerLevel: 2,
      boards: [{ board: "b1", plank: "p1", wood: "cherry", patches: 4 }],
      sessions: 2,
      seed: "abc",
    },
    output: {
      patches: [
        { patch: "b1-1", jar: "ethanol · jar 2", code: "Q2", order: [1, 3] },
        { patch: "b1-2", jar: "ethanol · jar 1", code: "D5", order: [2, 2] },
        { patch: "b1-3", jar: "isopropanol · jar 2", code: "T4", order: [3, 1] },
        { patch: "b1-4", jar: "isopropanol · jar 1", code: "B2", order: [4, 4] },
      ],
      cannotTell: [],
      smallestDifference: [],
    },
  },
});
