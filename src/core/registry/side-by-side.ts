import { z } from "zod";
import { DomainError } from "../domain-error.ts";
import { chiSquareTails } from "../statistics/distribution/chi-square.ts";
import { preferencePairs } from "../statistics/pairs/preference-shares.ts";
import { type Compared, fitPreferences, type Preferences } from "../statistics/pairs/preferences.ts";
import { words } from "../statistics/verdict/three-words.ts";
import { defineCalculation } from "./calculation.ts";
import { type Flag, flag } from "./flag.ts";

const times = z.int().min(0).max(100_000);
const orders = ["a", "b", "either"] as const;

const compared = z.strictObject({
  a: z.string().min(1),
  b: z.string().min(1),
  aPreferred: times,
  bPreferred: times,
  cannotTell: times.default(0),
  first: z.enum(orders).default("either").describe("which of the two lay left, or was shown first"),
});
type ComparedInput = z.output<typeof compared>;

const sideOf: Readonly<Record<(typeof orders)[number], number>> = { a: 1, b: -1, either: 0 };

function comparedOf(one: ComparedInput, i: number): Compared {
  if (one.a === one.b)
    throw new DomainError({
      code: "contradiction",
      field: `pairs[${i}].b`,
      value: one.b,
      because: "A patch does not lie beside itself.",
    });
  return {
    a: one.a,
    b: one.b,
    aPreferred: one.aPreferred,
    bPreferred: one.bPreferred,
    ties: one.cannotTell,
    order: sideOf[one.first],
  };
}

/** With fewer answers than this to a thing, errors and intervals by curvature are a guide only: from memory. */
const fewAnswers = 10;

function flagsOf(pairs: readonly ComparedInput[], fit: Preferences): readonly Flag[] {
  const answersTo = (name: string): number =>
    pairs
      .filter(({ a, b }) => a === name || b === name)
      .reduce((n, one) => n + one.aPreferred + one.bPreferred + one.cannotTell, 0);
  const few = fit.items.map(({ name }) => name).filter((name) => answersTo(name) < fewAnswers);
  const oneOrder =
    fit.degreesOfFreedom === 0 || chiSquareTails(fit.deviance, fit.degreesOfFreedom).upper >= 0.05;
  return [
    ...(few.length === 0
      ? []
      : [
          {
            code: "few-answers",
            field: "pairs",
            message: `Fewer than ${fewAnswers} answers: ${few.join(", ")}. Their intervals are a guide only.`,
          },
        ]),
    ...(oneOrder
      ? []
      : [
          {
            code: "no-one-order",
            field: "pairs",
            message: "The answers do not follow one order of liking: look at each pair by itself.",
          },
        ]),
  ];
}

export const sideBySide = defineCalculation({
  name: "side-by-side",
  purpose: "Which finish is liked better, from patches laid side by side, two at a time",
  input: z.strictObject({
    pairs: z
      .array(compared)
      .min(1)
      .max(10_000)
      .describe("answers to each two; those of one judge count as less than they are many"),
    matters: z
      .number()
      .min(0.01)
      .max(1)
      .default(0.3)
      .describe("of the answers, more for one than for the other: a convention of Lacbench's own"),
  }),
  output: z.object({
    about: z.literal("these patches"),
    liked: z.array(
      z.object({
        name: z.string(),
        share: z.number().describe("worth; they sum to 1"),
        logWorth: z.number().describe("against the first that was named"),
        standardError: z.number(),
      }),
    ),
    pairs: z.array(
      z.object({
        a: z.string(),
        b: z.string(),
        difference: z.number().describe("share of the answers for a, less that for b"),
        interval: z.tuple([z.number(), z.number()]),
        verdict: z.enum(words),
        directionSure: z.boolean(),
      }),
    ),
    matters: z.number(),
    firstHelps: z
      .object({ logAdvantage: z.number(), standardError: z.number() })
      .nullable()
      .describe("of lying left or being shown first; null where that was not told"),
    cannotTellFactor: z
      .number()
      .nullable()
      .describe("1: two of equal worth are called alike in a third of the answers"),
    deviance: z.number(),
    degreesOfFreedom: z.number(),
    flags: z.array(flag),
  }),
  run: ({ pairs, matters }) => {
    const counts = pairs.map(comparedOf);
    const [first] = pairs;
    const fit = fitPreferences(counts, {
      baseline: first?.a ?? "",
      ties: pairs.some(({ cannotTell }) => cannotTell > 0),
      order: pairs.some((one) => one.first !== "either"),
    });
    return {
      about: "these patches" as const,
      liked: fit.items
        .map(({ name, worth, logWorth, standardError }) => ({ name, share: worth, logWorth, standardError }))
        .sort((x, y) => y.share - x.share),
      pairs: preferencePairs(fit, matters).map(({ interval: [low, high], ...pair }) => ({
        ...pair,
        interval: [low, high] as [number, number],
      })),
      matters,
      firstHelps:
        fit.order === null ? null : { logAdvantage: fit.order.value, standardError: fit.order.standardError },
      cannotTellFactor: fit.tieFactor,
      deviance: fit.deviance,
      degreesOfFreedom: fit.degreesOfFreedom,
      flags: [...flagsOf(pairs, fit)],
    };
  },
  sources: [
    "R. A. Bradley and M. E. Terry, Biometrika 39 (1952) 324: worths from comparisons of two",
    "R. R. Davidson, J. Am. Statist. Assoc. 65 (1970) 317: “cannot tell” as an answer; R. R. Davidson and R. J. Beaver, Biometrics 33 (1977) 693: the side that helps",
    "L. R. Ford, Am. Math. Monthly 64 (1957) 28: when worths have an end",
  ],
  example: {
    input: {
      pairs: [
        { a: "L4", b: "P4", aPreferred: 14, bPreferred: 6 },
        { a: "L4", b: "S4", aPreferred: 9, bPreferred: 11 },
        { a: "P4", b: "S4", aPreferred: 5, bPreferred: 15 },
      ],
    },
    output: { about: "these patches", firstHelps: null, cannotTellFactor: null, degreesOfFreedom: 1 },
  },
});
