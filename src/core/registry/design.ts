import { z } from "zod";
import { cannotTell } from "../design/cannot-tell.ts";
import { layOut } from "../design/layout.ts";
import type { Factor, Plan } from "../design/plan.ts";
import { smallestDifferences } from "../design/smallest-difference.ts";
import { defineCalculation } from "./calculation.ts";

const pattern = z.record(z.string(), z.string());

const input = z.strictObject({
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
  sessions: z.int().min(1).max(100).default(1),
  noise: z
    .strictObject({
      patch: z.number().positive(),
      jar: z.number().min(0).default(0),
      plank: z.number().min(0).default(0),
    })
    .optional(),
  seed: z.string().min(1),
});

const output = z.looseObject({
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
  cannotTell: z.array(z.looseObject({ term: z.string(), with: z.array(z.string()) })),
  smallestDifference: z.array(
    z.looseObject({
      factor: z.string(),
      value: z.number().nullable(),
      power: z.number(),
      about: z.string(),
      degreesOfFreedom: z.number(),
    }),
  ),
});

type Input = z.output<typeof input>;

const factorOf = (f: Input["factors"][number]): Factor => ({
  name: f.name,
  levels: f.levels,
  appliedTo: f.appliedTo,
  ...(f.fromOneStock === undefined ? {} : { fromOneStock: f.fromOneStock }),
});

/** The plan in a calculation's input, without lot and noise. */
export const planOf = ({
  factors,
  jarsPerLevel,
  boards,
  forbidden,
  neighboursForbidden,
  sessions,
}: Input): Plan => ({
  factors: factors.map(factorOf),
  jarsPerLevel,
  boards,
  forbidden,
  neighboursForbidden,
  sessions,
});

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
      patches: patches.map((p) => ({ ...p, order: [...p.order] })),
      cannotTell: cannotTell(plan, patches).map((c) => ({ term: c.term, with: [...c.with] })),
      smallestDifference:
        given.noise === undefined
          ? []
          : smallestDifferences(plan, patches, given.noise).map(({ standardError, ...shown }) => ({
              ...shown,
              standardError: Number.isFinite(standardError) ? standardError : null,
            })),
    };
  },
  sources: [
    "R. A. Fisher, The Design of Experiments (1935), ch. IV: randomised blocks",
    "J. A. Eccleston and A. Hedayat, Ann. Statist. 2 (1974) 1238: (M,S)-optimal incomplete blocks",
    "R. A. Bailey, Design of Comparative Experiments (2008): strata, aliasing",
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
