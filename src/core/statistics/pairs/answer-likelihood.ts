import type { Surface } from "../numeric/climb.ts";
import { at, sum, type Vector } from "../numeric/vector.ts";

/** An answer to one pair: how often it was given, and what each parameter adds to the logarithm of its weight. */
export interface Answer {
  readonly count: number;
  readonly pulls: Float64Array;
}

/** How many answers a pair had. */
export const totalOf = (answers: readonly Answer[]): number => sum(answers.map(({ count }) => count));

function probabilities(answers: readonly Answer[], x: Vector): readonly number[] {
  const logs = answers.map(({ pulls }) => sum(pulls.map((pull, i) => pull * at(x, i))));
  const highest = Math.max(...logs);
  const weights = logs.map((log) => Math.exp(log - highest));
  const all = sum(weights);
  return weights.map((weight) => weight / all);
}

/** The log-likelihood: concave, since each answer's weight is the exponential of a sum of parameters. */
export function surfaceOf(pairs: readonly (readonly Answer[])[], x: Float64Array): Surface {
  const p = x.length;
  const gradient = new Float64Array(p);
  const information = Array.from({ length: p }, () => new Float64Array(p));
  let log = 0;
  for (const answers of pairs) {
    const shares = probabilities(answers, x);
    const n = totalOf(answers);
    const mean = Float64Array.from({ length: p }, (_, i) =>
      sum(answers.map(({ pulls }, k) => at(shares, k) * at(pulls, i))),
    );
    answers.forEach(({ count, pulls }, k) => {
      if (count > 0) log += count * Math.log(at(shares, k));
      for (let i = 0; i < p; i++) {
        const off = at(pulls, i) - at(mean, i);
        gradient[i] = at(gradient, i) + count * off;
        const row = information[i] as Float64Array; // i counts its rows
        for (let j = 0; j < p; j++)
          row[j] = at(row, j) + n * at(shares, k) * off * (at(pulls, j) - at(mean, j));
      }
    });
  }
  return { log, gradient, information };
}

/** What the answers themselves would give: the most that any model can. */
export const saturated = (pairs: readonly (readonly Answer[])[]): number =>
  sum(
    pairs.flatMap((answers) =>
      answers.map(({ count }) => (count > 0 ? count * Math.log(count / totalOf(answers)) : 0)),
    ),
  );
