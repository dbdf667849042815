import { DomainError, inRange } from "../../domain-error.ts";
import { randomFromSeed, shuffled } from "../../random.ts";

/** Letters of the things that vary: without I, which stands for the mean. */
export const factorLetters: readonly string[] = [..."ABCDEFGHJKLMNOPQRSTUVWXYZ"];

/** A two-level fraction of a full grid by the words that are always +: which effects it lays upon each other. */
export interface Fraction {
  readonly factors: number;
  readonly runs: number;
  /** Products of letters that are the same in every run, shortest letters first. */
  readonly definingWords: readonly string[];
  /** Length of the shortest word; null for a full grid, which lays nothing upon anything. */
  readonly resolution: number | null;
  /** How many words of 3, 4, … letters. */
  readonly wordLengths: readonly number[];
  /** For each effect of one or two letters, the others of one or two that it cannot be told apart from. */
  readonly aliases: Readonly<Record<string, readonly string[]>>;
  /** Effects of two letters that stand alone among those of one and two. */
  readonly clearPairs: readonly string[];
}

const bit = (letter: string): number => 1 << factorLetters.indexOf(letter);

const lettersOf = (word: number): string => factorLetters.filter((l) => word & bit(l)).join("");

const lengthOf = (word: number): number => {
  let count = 0;
  for (let w = word; w > 0; w &= w - 1) count++;
  return count;
};

function wordOf(generator: string, factors: number): number {
  const refuse = (because: string): never => {
    throw new DomainError({ code: "contradiction", field: "generators", value: generator, because });
  };
  const [own = "", product = "", ...more] = generator.replace(/\s/g, "").split("=");
  const known = factorLetters.slice(0, factors);
  const letters = [...product];
  if (own.length !== 1 || letters.length < 1 || more.length > 0)
    return refuse("It is one letter, an equals sign and the letters that it is the product of, as E=ABCD.");
  const strange = [own, ...letters].find((l) => !known.includes(l));
  if (strange !== undefined) return refuse(`${strange} is none of ${known.join(", ")}.`);
  if (letters.includes(own) || new Set(letters).size < letters.length)
    return refuse("A letter stands in it twice.");
  return [own, ...letters].reduce((word, l) => word ^ bit(l), 0);
}

/** All products of some words, without the empty one. */
function productsOf(words: readonly number[]): readonly number[] {
  const all: number[] = [];
  for (const word of words) all.push(word, ...all.map((w) => w ^ word));
  return all;
}

/**
 * What a two-level fraction lays upon what.
 *
 *     words = all products of the generators' words, squares struck out;   aliases of e = e·w for each word w
 *
 * @param factors     how many things vary, 2–25, scalar
 * @param generators  as `E=ABCD`: the level of E is the product of those of A, B, C and D
 * @throws DomainError for more than 25 things, a generator that cannot be read, one that follows from others
 *
 * Valid:    2 to 25 things, up to 12 generators
 * Source:   G. E. P. Box and J. S. Hunter, Technometrics 3 (1961) 311
 * @example
 * fractionOf(3, ["C=AB"]).resolution // => 3
 */
export function fractionOf(factors: number, generators: readonly string[]): Fraction {
  inRange("factors", factors, { min: 2, max: factorLetters.length });
  inRange("generators", generators.length, { min: 0, max: Math.min(12, factors - 1) });
  const words = productsOf(generators.map((g) => wordOf(g, factors)));
  if (words.includes(0) || new Set(words).size < words.length)
    throw new DomainError({
      code: "contradiction",
      field: "generators",
      value: generators,
      because: "One of them follows from the others.",
    });
  const letters = factorLetters.slice(0, factors);
  const single = letters.map(bit);
  const effects = [...single, ...single.flatMap((a, i) => single.slice(i + 1).map((b) => a | b))];
  const aliases = effects.map(
    (e) =>
      [
        lettersOf(e),
        words
          .map((w) => w ^ e)
          .filter((w) => w !== 0 && lengthOf(w) <= 2)
          .map(lettersOf)
          .sort(),
      ] as const,
  );
  const lengths = words.map(lengthOf);
  return {
    factors,
    runs: 2 ** (factors - generators.length),
    definingWords: words.map(lettersOf).sort(),
    resolution: words.length === 0 ? null : Math.min(...lengths),
    wordLengths: Array.from(
      { length: Math.max(0, factors - 2) },
      (_, i) => lengths.filter((n) => n === i + 3).length,
    ),
    aliases: Object.fromEntries(aliases),
    clearPairs: aliases.filter(([e, others]) => e.length === 2 && others.length === 0).map(([e]) => e),
  };
}

/**
 * The runs of a fraction: for each the level, −1 or +1, of every thing.
 *
 * @returns  runs×factors, the first letters in the standard order
 */
export function fractionRuns(factors: number, generators: readonly string[]): readonly (readonly number[])[] {
  const { runs } = fractionOf(factors, generators);
  const products = new Map(
    generators.map((g) => [g.trim()[0] as string, [...(g.replace(/\s/g, "").split("=")[1] ?? "")]]),
  );
  const letters = factorLetters.slice(0, factors);
  const basic = letters.filter((l) => !products.has(l));
  return Array.from({ length: runs }, (_, run) => {
    const level = (letter: string): number => {
      const made = products.get(letter);
      if (made !== undefined) return made.reduce((product, l) => product * level(l), 1);
      return Math.floor(run / 2 ** basic.indexOf(letter)) % 2 === 0 ? -1 : 1;
    };
    return letters.map(level);
  });
}

/** Fresh starts for the exchange of letters. */
const starts = 40;

/** Fewer short words are better, the shortest first. */
const isBetter = (a: readonly number[], b: readonly number[]): boolean => {
  const differs = a.findIndex((n, i) => n !== b[i]);
  return differs >= 0 && (a[differs] as number) < (b[differs] as number);
};

function wordLengthsOf(columns: readonly number[], basic: number): readonly number[] {
  const lengths = new Array<number>(basic + columns.length + 1).fill(0);
  const words = productsOf(columns.map((c, i) => c | (1 << (basic + i))));
  for (const w of words) {
    const n = lengthOf(w);
    lengths[n] = (lengths[n] as number) + 1;
  }
  return lengths;
}

/**
 * Generators that lay the fewest effects upon each other, for as many runs as are wanted: the fraction with the
 * fewest shortest words, found by exchanging letters from many starts while that helps.
 *
 * @param factors  2–25, scalar
 * @param runs     a power of 2, 4–256, scalar
 * @returns        generators, none for a full grid
 * @throws DomainError for a number of runs that is no power of 2, or too small for so many things
 *
 * Valid:    2 to 25 things, 4 to 256 runs
 * Accuracy: the best resolution in the handbook's table for up to 11 things; not certified beyond
 * Source:   minimum aberration, A. Fries and W. G. Hunter, Technometrics 22 (1980) 601
 */
export function bestGenerators(factors: number, runs: number): readonly string[] {
  inRange("factors", factors, { min: 2, max: factorLetters.length });
  const basic = Math.log2(runs);
  if (!Number.isInteger(basic) || basic < 2 || basic > 8 || factors > runs - 1)
    throw new DomainError({
      code: "out-of-range",
      field: "runs",
      value: runs,
      limits: { min: 4, max: 256 },
      because: `It is a power of two, and above the ${factors} things that vary.`,
    });
  if (factors <= basic) return [];
  const columns = Array.from({ length: 2 ** basic }, (_, c) => c).filter((c) => lengthOf(c) > 1);
  const random = randomFromSeed(`${factors} ${runs}`); // only the starts of the search: what is found is the same each time
  let best = improved(columns, shuffled(columns, random).slice(0, factors - basic), basic);
  for (let start = 1; start < starts; start++) {
    const next = improved(columns, shuffled(columns, random).slice(0, factors - basic), basic);
    if (isBetter(wordLengthsOf(next, basic), wordLengthsOf(best, basic))) best = next;
  }
  return best.map((c, i) => `${factorLetters[basic + i]}=${lettersOf(c)}`);
}

/** One letter after another is put where it does best, until none helps. */
function improved(columns: readonly number[], from: readonly number[], basic: number): readonly number[] {
  let taken = from;
  for (let helped = true; helped; ) {
    helped = false;
    for (const i of taken.keys()) {
      const next = taken.with(i, bestFor(columns, taken, i, basic));
      if (!isBetter(wordLengthsOf(next, basic), wordLengthsOf(taken, basic))) continue;
      taken = next;
      helped = true;
    }
  }
  return taken;
}

function bestFor(columns: readonly number[], taken: readonly number[], place: number, basic: number): number {
  let best = { c: taken[place] as number, lengths: wordLengthsOf(taken, basic) };
  for (const c of columns) {
    if (taken.includes(c)) continue;
    const lengths = wordLengthsOf(taken.with(place, c), basic);
    if (isBetter(lengths, best.lengths)) best = { c, lengths };
  }
  return best.c;
}
