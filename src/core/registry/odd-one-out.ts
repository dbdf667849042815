import { z } from "zod";
import { DomainError } from "../domain-error.ts";
import { criticalCount } from "../statistics/senses/difference-count.ts";
import { differenceEstimate, differenceForms, guessingOf } from "../statistics/senses/odd-one-out.ts";
import { defineCalculation } from "./calculation.ts";

const levels = [0.1, 0.05, 0.01, 0.001] as const;

const share = z.tuple([z.number(), z.number()]);

export const oddOneOutCalculation = defineCalculation({
  name: "odd-one-out",
  purpose: "Whether people can tell two finishes apart, from a count of right answers in a blind comparison",
  input: z.strictObject({
    form: z.enum(differenceForms),
    trials: z.int().min(1).max(10_000),
    /** Right answers; for `paired-two-sided` how often the first was chosen. */
    correct: z.int().min(0),
  }),
  output: z.object({
    /** Exact probability that guessing does as well. */
    pValue: z.number(),
    /** For `paired-two-sided` from −1 to 1: below 0 the second was chosen more often. */
    shareOfDiscriminators: z.number(),
    interval: share,
    /** Null where every answer was right: it has no end. */
    dPrime: z.number().nullable(),
    dPrimeInterval: z.tuple([z.number().nullable(), z.number().nullable()]),
    /** Fewest right answers at each level of significance; null where not even all would do. */
    correctNeeded: z.record(z.string(), z.number().nullable()),
  }),
  run: ({ form, trials, correct }) => {
    if (correct > trials)
      throw new DomainError({
        code: "out-of-range",
        field: "correct",
        value: correct,
        limits: { min: 0, max: trials },
        because: "There cannot be more right answers than trials.",
      });
    const found = differenceEstimate(form, correct, trials);
    return {
      pValue: found.pValue,
      shareOfDiscriminators: found.discriminators,
      interval: [found.discriminatorsInterval[0], found.discriminatorsInterval[1]] as [number, number],
      dPrime: found.dPrime,
      dPrimeInterval: [found.dPrimeInterval[0], found.dPrimeInterval[1]] as [number | null, number | null],
      correctNeeded: Object.fromEntries(
        levels.map((alpha) => [String(alpha), criticalCount(trials, guessingOf[form], alpha)]),
      ),
    };
  },
  sources: [
    "ISO 4120:2021, triangle test; ISO 10399:2017, duo-trio test; ISO 5495:2005, paired comparison",
    "D. M. Ennis, Journal of Sensory Studies 8 (1993) 353: d′ from the share of right answers",
  ],
  example: {
    input: { form: "triangle", trials: 30, correct: 13 },
    output: { pValue: 0.166011, shareOfDiscriminators: 0.15, correctNeeded: { "0.05": 15 } },
  },
});
