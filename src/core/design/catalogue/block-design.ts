import { DomainError } from "../../domain-error.ts";
import { type BlockNumbers, blockExistence } from "./block-existence.ts";
import { type Blocks, blocksFromOrbits, chosen, membersOf, subsets } from "./block-orbits.ts";
import { finiteField, primePowers } from "./finite-field.ts";

/** What a list of blocks comes to. */
export interface BlockCount {
  /** Whether all blocks are of one size without repeats, and every treatment and every pair comes equally often. */
  readonly balanced: boolean;
  readonly numbers: BlockNumbers;
  /** Why it is not balanced. */
  readonly because: string | null;
}

/**
 * Counts treatments and pairs in a list of blocks.
 *
 * @param blocks  b lists of treatments, any names
 * @returns       {balanced, numbers, because}; numbers are those of the first block, treatment and pair
 *
 * Source: R. C. Bose, Ann. Eugen. 9 (1939) 353, the definition
 */
export function countBlocks(blocks: readonly (readonly (number | string)[])[]): BlockCount {
  const names = [...new Set(blocks.flat())];
  const tally = (wanted: readonly (number | string)[]) =>
    blocks.filter((block) => wanted.every((name) => block.includes(name))).length;
  const uses = names.map((name) => tally([name]));
  const pairs = names.flatMap((a, i) => names.slice(i + 1).map((b) => tally([a, b])));
  const numbers: BlockNumbers = {
    treatments: names.length,
    blocks: blocks.length,
    timesEach: uses[0] ?? 0,
    blockSize: blocks[0]?.length ?? 0,
    meetings: pairs[0] ?? 0,
  };
  const same = (counts: readonly number[]) => counts.every((n) => n === counts[0]);
  const because = blocks.some((block) => new Set(block).size < block.length)
    ? "A board holds something twice."
    : !same(blocks.map((block) => block.length))
      ? "The boards are not of one size."
      : !same(uses)
        ? "Not everything stands equally often."
        : !same(pairs)
          ? "Not every pair meets equally often."
          : null;
  return { balanced: because === null, numbers, because };
}

/** The lines of the plane over a field: q² points in lines of q, or with the points at infinity q² + q + 1 in q + 1. */
function planeLines(v: number, k: number): Blocks | null {
  const projective = v !== k * k;
  const q = projective ? k - 1 : k;
  if (v !== q * q + (projective ? q + 1 : 0) || primePowers(q).length !== 1) return null;
  const { add, multiply } = finiteField(q);
  const along = Array.from({ length: q }, (_, i) => i);
  const infinity = (direction: number) => (projective ? [q * q + direction] : []);
  const lines = along.flatMap((slope) =>
    along.map((rise) => [...along.map((x) => x * q + add(multiply(slope, x), rise)), ...infinity(slope)]),
  );
  const upright = along.map((x) => [...along.map((y) => x * q + y), ...infinity(q)]);
  return [...lines, ...upright, ...(projective ? [[...along, q].map((d) => q * q + d)] : [])];
}

/** The squares of a field of 4t + 3 elements, shifted by every element: 2t + 1 that meet t times. */
function squaresOfField(v: number, k: number, lambda: number): Blocks | null {
  if (v % 4 !== 3 || v > 127 || primePowers(v).length !== 1 || k !== (v - 1) / 2 || lambda !== (v - 3) / 4)
    return null;
  const { add, multiply } = finiteField(v);
  const points = Array.from({ length: v }, (_, x) => x);
  const squares = [...new Set(points.slice(1).map((x) => multiply(x, x)))];
  return points.map((shift) => squares.map((x) => add(x, shift)));
}

/** Every choice of k, as often as the pairs have to meet. */
function everyChoice(v: number, k: number, lambda: number): Blocks | null {
  const once = chosen(v - 2, k - 2);
  if (lambda % once !== 0 || chosen(v, k) > 5000) return null;
  const all = v > 30 ? pairsOf(v) : [...subsets(v, k)].map(membersOf);
  return Array.from({ length: lambda / once }, () => all).flat();
}

const pairsOf = (v: number): Blocks =>
  Array.from({ length: v }, (_, x) => x).flatMap((x) => Array.from({ length: x }, (_, y) => [y, x]));

/** A larger symmetric design without one of its blocks, and without all that stood on it. */
function whatIsLeft(v: number, k: number, lambda: number, r: number): Blocks | null {
  if (r !== k + lambda) return null;
  const whole = symmetric(v + r, r, lambda);
  if (whole === null) return null;
  const [gone = [], ...others] = whole;
  const names = new Map(
    Array.from({ length: v + r }, (_, x) => x)
      .filter((x) => !gone.includes(x))
      .map((x, i) => [x, i]),
  );
  return others.map((block) => block.flatMap((x) => names.get(x) ?? []));
}

const symmetric = (v: number, k: number, lambda: number): Blocks | null =>
  planeLines(v, k) ?? squaresOfField(v, k, lambda) ?? blocksFromOrbits(v, k, lambda);

/** Two smaller designs of the same treatments and block size together. */
function inTwoParts(v: number, k: number, lambda: number): Blocks | null {
  for (let part = Math.floor(lambda / 2); part >= 1; part--) {
    if (!isCounted(v, k, part) || !isCounted(v, k, lambda - part)) continue;
    const one = made(v, k, part);
    const other = one === null ? null : part * 2 === lambda ? one : made(v, k, lambda - part);
    if (one !== null && other !== null) return [...one, ...other];
  }
  return null;
}

const isCounted = (v: number, k: number, lambda: number): boolean => {
  const r = (lambda * (v - 1)) / (k - 1);
  return blockExistence(numbersOf(v, k, lambda)).verdict !== "impossible" && Number.isInteger(r);
};

/** Blocks and repeats that follow from how often pairs meet. */
export function numbersOf(treatments: number, blockSize: number, meetings: number): BlockNumbers {
  const timesEach = (meetings * (treatments - 1)) / (blockSize - 1);
  return { treatments, blocks: (treatments * timesEach) / blockSize, timesEach, blockSize, meetings };
}

function made(v: number, k: number, lambda: number): Blocks | null {
  const { blocks: b, timesEach: r } = numbersOf(v, k, lambda);
  if (k === v) return Array.from({ length: b }, () => Array.from({ length: v }, (_, x) => x));
  const simple = everyChoice(v, k, lambda);
  if (simple !== null) return simple;
  if (2 * k > v) {
    const others = made(v, v - k, b - 2 * r + lambda);
    return others?.map((block) => membersBut(v, block)) ?? null;
  }
  return (
    (lambda === 1 ? planeLines(v, k) : null) ??
    squaresOfField(v, k, lambda) ??
    blocksFromOrbits(v, k, lambda) ??
    whatIsLeft(v, k, lambda, r) ??
    inTwoParts(v, k, lambda)
  );
}

const membersBut = (v: number, block: readonly number[]): number[] =>
  Array.from({ length: v }, (_, x) => x).filter((x) => !block.includes(x));

/**
 * A balanced incomplete block design: b blocks of k out of v treatments, in which each stands r times and each pair
 * meets λ times. From planes and squares over a field, from orbits of likely groups, from larger and smaller designs.
 *
 * @param numbers  treatments v, blocks b, times each r, block size k, meetings λ: scalars
 * @returns        b lists of k treatments, numbered from 0; the same each time
 * @throws DomainError `contradiction` where there can be none, with the condition; `no-convergence` where Lacbench
 *         knows none, or knows of one that it cannot make
 *
 * Valid:    small designs: all with up to 16 treatments in blocks of up to 6, and many others
 * Accuracy: exact: every pair is counted before it is given
 * Source:   as `blockExistence` and `blocksFromOrbits`
 */
export function balancedBlocks(numbers: BlockNumbers): Blocks {
  const existence = blockExistence(numbers);
  const refuse = (code: "contradiction" | "no-convergence", because: string): never => {
    throw new DomainError({ code, field: "boards", value: numbers.blocks, because });
  };
  if (existence.verdict === "impossible") return refuse("contradiction", existence.because);
  const blocks = made(numbers.treatments, numbers.blockSize, numbers.meetings);
  if (blocks === null || !countBlocks(blocks).balanced)
    return refuse(
      "no-convergence",
      existence.verdict === "exists"
        ? `Such a plan exists (${existence.because}), but Lacbench cannot make it.`
        : existence.because,
    );
  return blocks;
}
