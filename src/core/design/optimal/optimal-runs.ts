import { DomainError } from "../../domain-error.ts";
import { type Random, randomIndex } from "../../random.ts";
import { dot, Information, logDeterminant, type ModelRow } from "./information.ts";

/** Runs chosen from candidates, by their numbers, and how much they tell. */
export interface ChosenRuns {
  readonly chosen: readonly number[];
  readonly logDeterminant: number;
}

/** An exchange below this does not count: rounding alone would go on for ever. */
const least = 1 + 1e-9;

/**
 * Model rows as products of powers of what varies.
 *
 *     column_j = Π_i x_i^e_ji
 *
 * @param candidates  N×f
 * @param exponents   p×f
 * @returns           N rows of p
 *
 * Valid:  any numbers, whole exponents from 0
 * Source: the definition of a polynomial model
 */
export const monomialRows = (
  candidates: readonly (readonly number[])[],
  exponents: readonly (readonly number[])[],
): readonly ModelRow[] =>
  candidates.map((x) =>
    Float64Array.from(exponents, (powers) =>
      powers.reduce((product, e, i) => product * (x[i] as number) ** e, 1),
    ),
  );

/**
 * The runs, out of a list of candidates, that tell the most: the largest det X′X found from many starts, each
 * bettered by exchanging one run after another for the best candidate until none helps. A candidate may come twice.
 *
 * @param candidates  N model rows of p columns
 * @param runs        n ≥ p, scalar
 * @param starts      fresh starts, scalar
 * @throws DomainError for fewer runs than columns, and for candidates that cannot tell the columns apart
 *
 * Valid:    n ≥ p
 * Accuracy: the best of a few hundred starts is the enumerated optimum in every small case tried; not certified
 * Source:   R. D. Cook and C. J. Nachtsheim, Technometrics 22 (1980) 315, after V. V. Fedorov (1972)
 */
export function optimalRuns(
  candidates: readonly ModelRow[],
  runs: number,
  starts: number,
  random: Random,
): ChosenRuns {
  const p = candidates[0]?.length ?? 0;
  if (runs < p)
    throw new DomainError({
      code: "not-enough-data",
      field: "runs",
      value: runs,
      limits: { min: p },
      because: `There are ${p} things to find out, and so at least as many runs.`,
    });
  let best: ChosenRuns = { chosen: [], logDeterminant: Number.NEGATIVE_INFINITY };
  for (let s = 0; s < starts; s++) {
    const chosen = Array.from({ length: runs }, () => randomIndex(random, candidates.length));
    while (exchangeRuns(candidates, chosen));
    const value = logDeterminant(chosen.map((c) => candidates[c] as ModelRow));
    if (value > best.logDeterminant + 1e-12)
      best = { chosen: chosen.sort((a, b) => a - b), logDeterminant: value };
  }
  if (best.logDeterminant === Number.NEGATIVE_INFINITY)
    throw new DomainError({
      code: "contradiction",
      field: "candidates",
      value: candidates.length,
      because: "These candidates cannot tell the columns of the model apart.",
    });
  return best;
}

/** One pass over the runs, each exchanged for its best candidate; whether any was. */
function exchangeRuns(candidates: readonly ModelRow[], chosen: number[]): boolean {
  const information = new Information(
    chosen.map((c) => candidates[c] as ModelRow),
    candidates[0]?.length ?? 0,
  );
  let helped = false;
  for (const [i, from] of chosen.entries()) {
    const x = candidates[from] as ModelRow;
    const along = information.times(x);
    const stays = 1 - dot(x, along);
    let [best, to] = [least, from];
    for (const [c, z] of candidates.entries()) {
      const gain = (1 + dot(z, information.times(z))) * stays + dot(z, along) ** 2;
      if (gain > best) [best, to] = [gain, c];
    }
    if (to === from) continue;
    information.add(candidates[to] as ModelRow);
    information.remove(x);
    chosen[i] = to;
    helped = true;
  }
  return helped;
}

/**
 * The most that any number of runs can tell, a run: ln det Σ w x x′ for the best weights of the candidates.
 *
 * Weight goes from the candidate that is known best to the one that is known least, each time as much as helps most,
 * until no candidate is known less than the theorem allows: x′M⁻¹x ≤ p.
 *
 * @param candidates  N model rows of p columns
 * @returns           ln det, scalar
 *
 * Valid:    candidates that can tell the columns apart
 * Accuracy: 1e-9·p in ln det, by the theorem's own bound
 * Source:   J. Kiefer and J. Wolfowitz, Canad. J. Math. 12 (1960) 363; steps as D. Böhning, Metrika 33 (1986) 337
 */
export function bestPossible(candidates: readonly ModelRow[]): number {
  const p = candidates[0]?.length ?? 0;
  const weights = candidates.map(() => 1 / candidates.length);
  for (let steps = 0; steps < 20_000; steps++) {
    const information = new Information(weighted(candidates, weights), p);
    const along = candidates.map((x) => information.times(x));
    const known = candidates.map((x, i) => dot(x, along[i] as Float64Array));
    const most = indexOfLargest(known);
    if ((known[most] as number) <= p * (1 + 1e-9)) break;
    const fewest = indexOfLargest(
      known.map((d, i) => ((weights[i] as number) > 0 ? -d : Number.NEGATIVE_INFINITY)),
    );
    const [high, low] = [known[most] as number, known[fewest] as number];
    const shared = dot(candidates[most] as ModelRow, along[fewest] as Float64Array);
    const step = Math.min((high - low) / (2 * (high * low - shared ** 2)), weights[fewest] as number);
    weights[most] = (weights[most] as number) + step;
    weights[fewest] = step === weights[fewest] ? 0 : (weights[fewest] as number) - step;
  }
  return logDeterminant(candidates, weights);
}

const weighted = (candidates: readonly ModelRow[], weights: readonly number[]): ModelRow[] =>
  candidates.map((x, i) => x.map((value) => value * Math.sqrt(weights[i] as number)));

const indexOfLargest = (values: readonly number[]): number =>
  values.reduce((best, value, i) => (value > (values[best] as number) ? i : best), 0);
