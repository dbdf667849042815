import { primePowers } from "./finite-field.ts";

/** A balanced incomplete block design by its numbers: each treatment stands r times, each pair meets λ times. */
export interface BlockNumbers {
  readonly treatments: number;
  readonly blocks: number;
  readonly timesEach: number;
  readonly blockSize: number;
  readonly meetings: number;
}

/** What is known of a design: that there is one, that there can be none, or nothing that Lacbench knows. */
export interface Existence {
  readonly verdict: "exists" | "impossible" | "not known";
  /** A sentence for the person; the condition or the source by name. */
  readonly because: string;
}

const impossible = (because: string): Existence => ({ verdict: "impossible", because });

const squareRoot = (n: number): number => Math.round(Math.sqrt(n));
const isSquare = (n: number): boolean => squareRoot(n) ** 2 === n;
const withoutSquares = (n: number): number =>
  Math.sign(n) * primePowers(Math.abs(n)).reduce((free, [p, e]) => (e % 2 === 1 ? free * p : free), 1);

const power = (base: number, exponent: number, modulus: number): number => {
  let [result, b] = [1, base % modulus];
  for (let e = exponent; e > 0; e = Math.floor(e / 2)) {
    if (e % 2 === 1) result = (result * b) % modulus;
    b = (b * b) % modulus;
  }
  return result;
};

/** Whether a square-free number that p does not divide is a square mod the odd prime p. */
const isResidue = (a: number, p: number): boolean => power(((a % p) + p) % p, (p - 1) / 2, p) === 1;

/**
 * Whether x² = a·y² + b·z² has a solution in whole numbers other than nothing, by Legendre's conditions.
 *
 * With square-free a and b, d their common divisor: not both are negative, and a, b and −ab/d² are squares modulo the
 * odd primes of b/d, a/d and d.
 *
 * Source: A. M. Legendre; K. Ireland and M. Rosen, A Classical Introduction to Modern Number Theory (1990), 17.3
 * @example
 * hasSolution(5, -2) // => false
 */
export function hasSolution(a: number, b: number): boolean {
  const [s, t] = [withoutSquares(a), withoutSquares(b)];
  if (s < 0 && t < 0) return false;
  const common = primePowers(Math.abs(s)).flatMap(([p]) => (t % p === 0 ? [p] : []));
  const d = common.reduce((product, p) => product * p, 1);
  const everywhere = (of: number, value: number) =>
    primePowers(Math.abs(of)).every(([p]) => p === 2 || isResidue(value, p));
  return everywhere(t / d, s) && everywhere(s / d, t) && everywhere(d, (-s * t) / d ** 2);
}

/** Bruck, Ryser and Chowla on a symmetric design, with as many blocks as treatments; null where they do not forbid it. */
function whyNotSymmetric(v: number, k: number, lambda: number): string | null {
  const order = k - lambda;
  if (v % 2 === 0)
    return isSquare(order)
      ? null
      : `with an even number of treatments, ${k} − ${lambda} = ${order} would have to be a square`;
  const sign = ((v - 1) / 2) % 2 === 0 ? 1 : -1;
  return hasSolution(order, sign * lambda)
    ? null
    : `x² = ${order}·y² ${sign > 0 ? "+" : "−"} ${lambda}·z² has no solution in whole numbers`;
}

/** Designs shown not to exist by complete search, by their numbers and who showed it. */
const searchedInVain: readonly (readonly [v: number, k: number, lambda: number, who: string])[] = [
  [111, 11, 1, "C. W. H. Lam, L. Thiel and S. Swiercz, 1989"],
  [22, 8, 4, "R. Bilous and others, 2007"],
  [46, 6, 1, "S. K. Houghten and others, 2001"],
];

function whyNotSearched(v: number, k: number, lambda: number): string | null {
  const found = searchedInVain.find(([a, b, c]) => a === v && b === k && c === lambda);
  return found === undefined ? null : `a complete search found none (${found[3]})`;
}

/** What the counting alone demands; the first thing that does not hold. */
function whyNotCounted({
  treatments: v,
  blocks: b,
  timesEach: r,
  blockSize: k,
  meetings: l,
}: BlockNumbers): string | null {
  if (![v, b, r, k, l].every((n) => Number.isInteger(n) && n > 0))
    return "every number has to be whole and above 0";
  if (k < 2 || k > v) return `a board has to hold from 2 to ${v} different ones`;
  if (v * r !== b * k)
    return `${v} treatments, ${r} times each, are ${v * r} patches, and ${b} boards of ${k} are ${b * k}`;
  if (l * (v - 1) !== r * (k - 1))
    return `beside its ${r} patches one treatment has ${r * (k - 1)} neighbours on the board, and to meet ${v - 1} others ${l} times each it needs ${l * (v - 1)}`;
  if (k < v && b < v) return `${v} treatments need at least ${v} boards (R. A. Fisher, 1940)`;
  return null;
}

/**
 * What is left of a symmetric design when a block and all its treatments go: for λ = 1 and 2 every design of these
 * numbers comes from one, so where there is no symmetric one there is none of these either.
 */
function whyNotResidual({
  treatments: v,
  timesEach: r,
  blockSize: k,
  meetings: l,
}: BlockNumbers): string | null {
  if (l > 2 || r !== k + l) return null;
  const why = whyNotSymmetric(v + r, r, l) ?? whyNotSearched(v + r, r, l);
  return why === null ? null : `it would be part of a design of ${v + r} in blocks of ${r}, and there ${why}`;
}

/** Orders v for which blocks of six that meet once are not settled. Handbook of Combinatorial Designs (2007), II.3.1. */
const openSixes: readonly number[] = [
  51, 61, 81, 166, 226, 231, 256, 261, 286, 316, 321, 346, 351, 376, 406, 411, 436, 441, 471, 501, 561, 591,
  616, 646, 651, 676, 771, 796, 801,
];

/** Designs that are known for every number of treatments that the counting allows. */
function whoKnows({ treatments: v, blockSize: k, meetings: l }: BlockNumbers): string | null {
  if (k === v) return "every board holds everything";
  if (k <= 5) return "H. Hanani, Discrete Math. 11 (1975) 255";
  if (k === 6 && (l > 1 || !openSixes.includes(v))) return "Handbook of Combinatorial Designs (2007), II.3";
  const isPower = (n: number) => n > 1 && primePowers(n).length === 1;
  if (l === 1 && v === (k - 1) ** 2 + k && isPower(k - 1)) return "a projective plane over a field";
  if (l === 1 && v === k ** 2 && isPower(k)) return "an affine plane over a field";
  return null;
}

/**
 * What is known about a balanced incomplete block design, before one is looked for.
 *
 *     v·r = b·k,   λ(v − 1) = r(k − 1),   b ≥ v,   and for b = v: x² = (k − λ)y² + (−1)^((v−1)/2)·λz²
 *
 * "Impossible" rests on a proof that it names; "not known" means only that Lacbench has no construction for it.
 *
 * @param numbers  treatments v, blocks b, times each r, block size k, meetings λ: scalars
 * @returns        {verdict, because}
 *
 * Valid:    any whole numbers
 * Accuracy: exact where it says "exists" or "impossible"
 * Source:   R. A. Fisher (1940); R. H. Bruck and H. J. Ryser (1949), S. Chowla and Ryser (1950); M. Hall and
 *           W. S. Connor (1954) for parts of symmetric designs; H. Hanani (1975)
 * @example
 * blockExistence({ treatments: 22, blocks: 22, timesEach: 7, blockSize: 7, meetings: 2 }).verdict // => "impossible"
 */
export function blockExistence(numbers: BlockNumbers): Existence {
  const { treatments: v, blocks: b, blockSize: k, meetings: l } = numbers;
  const say = `${v} treatments on ${b} boards of ${k}, each pair together ${l === 1 ? "once" : `${l} times`}`;
  const no =
    whyNotCounted(numbers) ??
    (b === v && k < v ? whyNotSymmetric(v, k, l) : null) ??
    whyNotResidual(numbers) ??
    whyNotSearched(v, k, l);
  if (no !== null) return impossible(`There can be no such plan (${say}): ${no}.`);
  if (2 * k > v && k < v - 1) return ofComplement(numbers, say);
  const who = k === v - 1 ? "leave out one at a time" : whoKnows(numbers);
  return who === null
    ? { verdict: "not known", because: `No such plan (${say}) is known to Lacbench; there may be one.` }
    : { verdict: "exists", because: who };
}

/** Blocks of what is left out: there is a design exactly when there is one of these. */
function ofComplement(
  { treatments: v, blocks: b, timesEach: r, blockSize: k, meetings: l }: BlockNumbers,
  say: string,
): Existence {
  const other = blockExistence({
    treatments: v,
    blocks: b,
    timesEach: b - r,
    blockSize: v - k,
    meetings: b - 2 * r + l,
  });
  if (other.verdict === "exists") return other;
  return other.verdict === "impossible"
    ? impossible(`There can be no such plan (${say}): turned inside out, ${other.because}`)
    : { verdict: "not known", because: `No such plan (${say}) is known to Lacbench; there may be one.` };
}
