import type { Random } from "../../random.ts";
import { experimentalUnits } from "./experimental-unit.ts";
import { type OddsBeside, oddsBeside } from "./odds-beside.ts";
import type { Reading } from "./readings.ts";
import { blocksOf, dealtUnits } from "./sittings.ts";
import { type PermutationTest, stratifiedPermutation } from "./stratified-permutation.ts";
import type { OrderedQuestion, OrderedVerdict } from "./verdict-ordered.ts";

/** What one kind of evidence says of any difference at all. */
export interface Evidence {
  readonly kind: "shares" | "permutation" | "odds";
  readonly differs: boolean;
}

export interface OrderedEvidence {
  /** Levels dealt anew among what was made apart; null when every block saw all levels alike. */
  readonly permutation: PermutationTest | null;
  /** Null for ranks, and where one level stands above another in every answer. */
  readonly odds: OddsBeside | null;
  readonly evidence: readonly Evidence[];
}

/**
 * What stands beside the shares of an ordered response: a permutation of levels among what was made apart, and the
 * proportional-odds model, in which jars or planks are random where each level has several, else the blocks.
 *
 * @param readings  n readings, as the verdict had them
 * @param question  what the verdict was asked
 * @param verdict   its answer
 * @param random    draws dealings where there are too many to try all
 * @returns         both, and which kinds of evidence show a difference at 5 %
 *
 * Valid:  as `verdictOrdered`
 * Source: P. Good, Permutation, Parametric and Bootstrap Tests of Hypotheses (2005); P. McCullagh, J. R. Statist. Soc. B
 *         42 (1980) 109
 */
export function orderedEvidence(
  readings: readonly Reading[],
  question: OrderedQuestion & { readonly ranked: boolean },
  verdict: OrderedVerdict,
  random: Random,
): OrderedEvidence {
  const { compare } = question;
  const blocks = blocksOf(readings, compare, question.rankedWithinBoards ?? false);
  const units = experimentalUnits(readings, compare, question.appliedTo);
  const permutation =
    verdict.overall === null ? null : stratifiedPermutation(dealtUnits(blocks, compare, units.error), random);
  const name = units.error?.place ?? blocks.of;
  const levels = verdict.levels.map((l) => l.level);
  const odds = question.ranked
    ? null
    : oddsBeside(readings, compare, levels, { name, of: (r) => r[name] }, verdict.method.multiplier);
  return {
    permutation,
    odds,
    evidence: [
      { kind: "shares", differs: verdict.pairs.some((p) => p.directionSure) },
      ...(permutation === null
        ? []
        : [{ kind: "permutation", differs: permutation.pValue <= 0.05 } as const]),
      ...(odds === null
        ? []
        : [
            {
              kind: "odds",
              differs: odds.pairs.some((p) => p.interval[0] > 1 || p.interval[1] < 1),
            } as const,
          ]),
    ],
  };
}
