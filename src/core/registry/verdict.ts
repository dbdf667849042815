import { z } from "zod";
import { DomainError } from "../domain-error.ts";
import { randomFromSeed } from "../random.ts";
import { type OrderedEvidence, orderedEvidence } from "../statistics/verdict/ordered-evidence.ts";
import { places, type Reading } from "../statistics/verdict/readings.ts";
import { words } from "../statistics/verdict/three-words.ts";
import { type Question, verdictMeasured } from "../statistics/verdict/verdict-measured.ts";
import { type OrderedVerdict, verdictOrdered } from "../statistics/verdict/verdict-ordered.ts";
import { defineCalculation } from "./calculation.ts";
import { flag } from "./flag.ts";
import { permutation } from "./permutation.ts";
import { flagOfRemark, flagsOfDays, flagsOfEvidence, mattersOf } from "./verdict-flags.ts";
import {
  checkCodes,
  checkCompared,
  checkLevels,
  checkRanks,
  checkVaries,
  readingsOf,
  type VerdictInput,
  verdictInput,
} from "./verdict-input.ts";

const pair = z.object({
  a: z.string(),
  b: z.string(),
  /** a − b. */
  difference: z.number(),
  interval: z.tuple([z.number(), z.number()]),
  verdict: z.enum(words),
  directionSure: z.boolean(),
});

const output = z.object({
  about: z.string(),
  pairs: z.array(pair),
  method: z.object({
    name: z.string(),
    terms: z.array(z.string()),
    errorTerm: z.string(),
    errorMeanSquare: z.number().nullable(),
    multiplier: z.number(),
    confidence: z.number(),
    variances: z.array(z.object({ of: z.string(), variance: z.number() })),
  }),
  degreesOfFreedom: z.number(),
  /** Of no difference at all, all pairs allowed for. */
  pValue: z.number(),
  letters: z.record(z.string(), z.string()),
  moreNeeded: z.object({ jars: z.number().nullable(), boards: z.number().nullable() }),
  matters: z.number(),
  levels: z.array(z.object({ level: z.string(), mean: z.number(), patches: z.number(), jars: z.number() })),
  wobble: z.object({
    judges: z.number(),
    readingsPerPatch: z.number(),
    sameJudge: z.number().nullable(),
    betweenJudges: z.number().nullable(),
  }),
  /** One standard deviation of patches treated alike, and of the jars (planks, boards) that levels were made apart in. */
  noise: z
    .object({
      patch: z.number(),
      unit: z.object({ of: z.enum(places), deviation: z.number() }).nullable(),
    })
    .nullable(),
  /** The test of all levels at once, for ordered and ranked responses. */
  overall: z
    .object({ method: z.string(), statistic: z.number(), degreesOfFreedom: z.number(), pValue: z.number() })
    .nullable(),
  /** Levels dealt anew among what was made apart, for ordered and ranked responses. */
  permutation: permutation.nullable(),
  /** The proportional-odds model of an ordered response. */
  odds: z
    .object({
      pairs: z.array(
        z.object({
          a: z.string(),
          b: z.string(),
          oddsRatio: z.number(),
          interval: z.tuple([z.number(), z.number()]),
          effect: z.number(),
        }),
      ),
      random: z.string(),
      deviation: z.number(),
      logLikelihood: z.number(),
    })
    .nullable(),
  evidence: z.array(z.object({ kind: z.enum(["shares", "permutation", "odds"]), differs: z.boolean() })),
  flags: z.array(flag),
});

const hardnessRows = [
  [9.3, 9.4, 9.6, 10],
  [9.4, 9.3, 9.8, 9.9],
  [9.2, 9.4, 9.5, 9.7],
  [9.7, 9.6, 10, 10.2],
].flatMap((values, tip) =>
  values.map((value, coupon) => ({
    patch: `${coupon + 1}${"abcd"[tip]}`,
    block: `coupon ${coupon + 1}`,
    factors: { tip: String(tip + 1) },
    value,
  })),
);

interface WithEvidence extends OrderedVerdict, OrderedEvidence {}

function verdictOf(given: VerdictInput, readings: readonly Reading[], matters: number): WithEvidence {
  const { compare, control, response } = given;
  const appliedTo = given.appliedTo[compare];
  if (appliedTo === undefined)
    throw new DomainError({
      code: "missing",
      field: `appliedTo.${compare}`,
      value: undefined,
      limits: { allowed: places },
    });
  const question: Question = { compare, appliedTo, matters, control };
  if (response.scale === "measured") {
    const nothing = { overall: null, permutation: null, odds: null, evidence: [] };
    return { ...verdictMeasured(readings, question), ...nothing };
  }
  if (control !== undefined)
    throw new DomainError({
      code: "contradiction",
      field: "control",
      value: control,
      because: "Against one control only what was measured is compared; leave it out, and all pairs are.",
    });
  const ranked = response.scale === "ranked";
  const ordered = { ...question, rankedWithinBoards: ranked, ranked };
  const verdict = verdictOrdered(readings, ordered);
  return { ...verdict, ...orderedEvidence(readings, ordered, verdict, randomFromSeed(given.seed)) };
}

/** The same in lists of its own, as JSON has it. */
const plain = (verdict: Omit<WithEvidence, "remarks">) => ({
  ...verdict,
  noise:
    verdict.noise === null
      ? null
      : { ...verdict.noise, unit: verdict.noise.unit && { ...verdict.noise.unit } },
  pValue: verdict.pValue(),
  pairs: verdict.pairs.map((p) => ({ ...p, interval: [...p.interval] as [number, number] })),
  method: { ...verdict.method, terms: [...verdict.method.terms], variances: [...verdict.method.variances] },
  levels: [...verdict.levels],
  evidence: [...verdict.evidence],
  odds:
    verdict.odds === null
      ? null
      : {
          ...verdict.odds,
          pairs: verdict.odds.pairs.map((p) => ({ ...p, interval: [...p.interval] as [number, number] })),
        },
});

export const verdictCalculation = defineCalculation({
  name: "verdict",
  purpose: "Of each two levels of what was varied: different, as good as equal, or not enough to tell",
  input: verdictInput,
  output,
  run: (given) => {
    checkCompared(given);
    checkCodes(given);
    const { matters, flags } = mattersOf(given.response);
    const { readings, rowOf } = readingsOf(given);
    checkLevels(given, readings);
    checkVaries(readings, rowOf);
    checkRanks(given, readings, rowOf);
    const { remarks, ...verdict } = verdictOf(given, readings, matters);
    return {
      ...plain(verdict),
      matters,
      flags: [
        ...flags,
        ...flagsOfDays(given.rows),
        ...remarks.map(flagOfRemark),
        ...flagsOfEvidence(verdict.evidence),
      ],
    };
  },
  sources: [
    "NIST/SEMATECH e-Handbook of Statistical Methods, 7.4.7.1: Tukey's method",
    "D. C. Montgomery, Design and Analysis of Experiments (2013), ch. 4 and 14: blocks, and the error that a factor is held against",
    "W. J. Conover, Practical Nonparametric Statistics (1999), 5.8: Friedman's test with ties",
    "T. Tango, Statistics in Medicine 17 (1998) 891: the score interval for paired shares",
    "M. G. Kenward and J. H. Roger, Biometrics 53 (1997) 983: mixed models where rows were lost or several judged",
    "C. W. Dunnett, J. Am. Statist. Assoc. 50 (1955) 1096: several levels against one control",
    "P. McCullagh, J. R. Statist. Soc. B 42 (1980) 109: proportional odds",
  ],
  example: {
    input: {
      response: { name: "hardness", scale: "measured", matters: 0.2 },
      compare: "tip",
      appliedTo: { tip: "patch" },
      rows: hardnessRows,
    },
    output: { degreesOfFreedom: 9, about: "tip" },
  },
});
