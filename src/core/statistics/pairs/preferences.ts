import { DomainError } from "../../domain-error.ts";
import { cholesky } from "../numeric/cholesky.ts";
import { climb } from "../numeric/climb.ts";
import { at, sum, type Vector } from "../numeric/vector.ts";
import { type Answer, saturated, surfaceOf, totalOf } from "./answer-likelihood.ts";
import { checkJoined } from "./joined.ts";

/** How often each of two was preferred to the other. */
export interface Compared {
  readonly a: string;
  readonly b: string;
  readonly aPreferred: number;
  readonly bPreferred: number;
  readonly ties?: number;
  /** What the order speaks for: 1 for a (shown first, say), −1 for b, 0 for neither. */
  readonly order?: number;
}

export interface PreferenceModel {
  /** Its logarithm of worth is 0. */
  readonly baseline: string;
  /** Ties are answers of their own, not left out. */
  readonly ties: boolean;
  /** One advantage, the same for all, of what the order speaks for. */
  readonly order: boolean;
}

interface WithError {
  readonly value: number;
  readonly standardError: number;
}

export interface Preferences {
  /** In the order of first mention; worths sum to 1. */
  readonly items: readonly {
    readonly name: string;
    readonly worth: number;
    readonly logWorth: number;
    readonly standardError: number;
  }[];
  /** ln(worth a/worth b), with its variance. */
  readonly difference: (a: string, b: string) => { readonly estimate: number; readonly variance: number };
  readonly order: WithError | null;
  /** ν: how readily two of equal worth are called alike; null where ties are not in the model. */
  readonly tieFactor: number | null;
  /** Σ count·ln p over the answers, without the multinomial constant. */
  readonly logLikelihood: number;
  readonly deviance: number;
  readonly degreesOfFreedom: number;
}

interface Layout {
  readonly names: readonly string[];
  readonly place: ReadonlyMap<string, number>;
  readonly order: number;
  readonly tie: number;
  readonly count: number;
}

function layoutOf(compared: readonly Compared[], model: PreferenceModel): Layout {
  const names = [...new Set(compared.flatMap(({ a, b }) => [a, b]))];
  if (!names.includes(model.baseline))
    throw new DomainError({
      code: "unknown-name",
      field: "baseline",
      value: model.baseline,
      limits: { allowed: names },
    });
  const free = names.filter((name) => name !== model.baseline);
  let count = free.length;
  const order = model.order ? count++ : -1;
  const tie = model.ties ? count++ : -1;
  return { names, place: new Map(free.map((name, i) => [name, i])), order, tie, count };
}

function answersTo(one: Compared, layout: Layout): readonly Answer[] {
  const blank = () => new Float64Array(layout.count);
  const add = (pulls: Float64Array, name: string, share: number): void => {
    const i = layout.place.get(name);
    if (i !== undefined) pulls[i] = at(pulls, i) + share;
  };
  const [forA, forB, forNeither] = [blank(), blank(), blank()];
  add(forA, one.a, 1);
  add(forB, one.b, 1);
  if (layout.order >= 0) forA[layout.order] = one.order ?? 0;
  const sure = [
    { count: one.aPreferred, pulls: forA },
    { count: one.bPreferred, pulls: forB },
  ];
  if (layout.tie < 0) return sure;
  add(forNeither, one.a, 0.5);
  add(forNeither, one.b, 0.5);
  forNeither[layout.tie] = 1;
  return [...sure, { count: one.ties ?? 0, pulls: forNeither }];
}

const endless = (because: string): DomainError =>
  new DomainError({ code: "no-convergence", field: "pairs", value: null, because });
/** A worth e²⁰ times another's is none that answers fixed. */
const farthest = 20;

/**
 * How much each of several things is preferred, from comparisons of two at a time.
 *
 *     P(a) : P(b) : P(tie) = γ·πa : πb : ν·√(πa·πb)
 *
 * with ν = 0 where ties are not in the model, and γ = 1 where the order is not.
 *
 * @param compared  counts of answers, a pair of things each; a pair may stand more than once
 * @param model     baseline, and whether ties and an advantage of order belong to it
 * @returns         worths with standard errors of their logarithms, differences, order, ties, likelihood and deviance
 * @throws DomainError for a baseline that was not compared, and for answers that leave a worth without end: a thing never preferred to
 *         any other, or never less, in itself or as a group
 *
 * Valid:    answers independent of one another; those of one judge are less so than they count
 * Accuracy: 6 digits against R 4.2.2 glm on printed examples
 * Source:   R. A. Bradley and M. E. Terry, Biometrika 39 (1952) 324; R. R. Davidson, J. Am. Statist. Assoc. 65 (1970) 317 (ties);
 *           R. R. Davidson and R. J. Beaver, Biometrics 33 (1977) 693 (order); A. Agresti, Categorical Data Analysis (2002), 10.6
 * @example
 * fitPreferences([{ a: "oil", b: "wax", aPreferred: 3, bPreferred: 1 }], { baseline: "wax", ties: false, order: false }).items[0].worth // => 0.75
 */
export function fitPreferences(compared: readonly Compared[], model: PreferenceModel): Preferences {
  const layout = layoutOf(compared, model);
  checkJoined(layout.names, compared, model.ties);
  const pairs = compared.map((one) => answersTo(one, layout)).filter((answers) => totalOf(answers) > 0);
  const found = climb(new Float64Array(layout.count), (x) => surfaceOf(pairs, x));
  if (found === "flat" || found === "endless" || found.x.some((value) => !(Math.abs(value) < farthest)))
    throw endless("These answers leave one of the figures without an end: more comparisons would fix it.");
  const { x, top } = found;
  const covariance = cholesky(top.information)?.inverse();
  if (covariance === undefined) throw endless("These answers do not fix every figure.");
  const logOf = (name: string): number => {
    const i = layout.place.get(name);
    return i === undefined ? 0 : at(x, i);
  };
  const covarianceOf = (a: string, b: string): number => {
    const [i, j] = [layout.place.get(a), layout.place.get(b)];
    return i === undefined || j === undefined ? 0 : at(covariance[i] as Vector, j); // a place among the parameters
  };
  const weights = layout.names.map((name) => Math.exp(logOf(name)));
  const all = sum(weights);
  return {
    items: layout.names.map((name, i) => ({
      name,
      worth: at(weights, i) / all,
      logWorth: logOf(name),
      standardError: Math.sqrt(covarianceOf(name, name)),
    })),
    difference: (a, b) => ({
      estimate: logOf(a) - logOf(b),
      variance: covarianceOf(a, a) + covarianceOf(b, b) - 2 * covarianceOf(a, b),
    }),
    order:
      layout.order < 0
        ? null
        : {
            value: at(x, layout.order),
            standardError: Math.sqrt(at(covariance[layout.order] as Vector, layout.order)), // as above
          },
    tieFactor: layout.tie < 0 ? null : Math.exp(at(x, layout.tie)),
    logLikelihood: top.log,
    deviance: 2 * (saturated(pairs) - top.log),
    degreesOfFreedom: sum(pairs.map((answers) => answers.length - 1)) - layout.count,
  };
}
