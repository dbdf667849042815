import type { Random } from "../../random.ts";
import { sum } from "../numeric/vector.ts";
import type { WatchedJar } from "../times/ready-time.ts";
import { turnbull } from "../times/turnbull.ts";
import { type PermutationTest, stratifiedPermutation } from "./stratified-permutation.ts";

/** S ln S, nought at both ends. */
const entropy = (share: number): number => (share > 0 ? share * Math.log(share) : 0);

/**
 * Whether groups of jars differ in their times, by a log-rank test for looks that were hours apart: the groups are
 * dealt anew among the jars.
 *
 *     score = [S(l) ln S(l) − S(r) ln S(r)] / [S(l) − S(r)],   S from all jars together (Turnbull)
 *
 * A jar that was ready early scores high. It stands beside the ratios of a fitted curve, and asks for no curve.
 *
 * @param jars    n jars, each ready after `left` and by `right`
 * @param random  draws dealings where there are more than 20 000
 * @returns       {statistic, pValue, dealings, exact}; null where the looks set no jar apart from another
 *
 * Valid:    jars watched alike in all groups; two groups or more
 * Accuracy: as `stratifiedPermutation`
 * Source:   D. M. Finkelstein, Biometrics 42 (1986) 845, the score; J. Sun, Statist. Med. 15 (1996) 1387
 */
export function logRankPermutation(jars: readonly WatchedJar[], random: Random): PermutationTest | null {
  if (new Set(jars.map((j) => j.group)).size < 2) return null;
  const { intervals } = turnbull(jars);
  /** Share after a time; what happened exactly then counts as after it for a jar seen happening at that time only. */
  const after = (time: number, withIt: boolean): number =>
    sum(intervals.filter((i) => i.left >= time && (withIt || i.right !== time)).map((i) => i.mass));
  const scores = jars.map(({ left, right }) => {
    const late = after(left, left === right);
    const early = right === null ? 0 : after(right, false);
    return late - early > 1e-12 ? (entropy(late) - entropy(early)) / (late - early) : 0;
  });
  const middle = sum(scores) / scores.length;
  if (scores.every((s) => Math.abs(s - middle) < 1e-9)) return null;
  const units = jars.map(({ group }, i) => ({
    stratum: "",
    level: group,
    total: (scores[i] as number) - middle, // one score a jar
    count: 1,
  }));
  return {
    ...stratifiedPermutation(units, random),
    method: "log-rank for looks hours apart, groups dealt anew",
  };
}
