import { type Random, randomFromSeed, shuffled } from "../../random.ts";
import { likelyGroups, type Move } from "./block-groups.ts";

/** Blocks as the treatments they hold, numbered from 0. */
export type Blocks = readonly (readonly number[])[];

/** Blocks that a group moves into each other, and how often they cover a pair of each kind. */
interface Orbit {
  readonly blocks: Blocks;
  readonly covers: readonly number[];
}

/** Bits of a whole number hold a block, and lists of all blocks are kept: both bound what is looked into. */
const mostPoints = 30;
const mostSubsets = 60_000;
const mostSteps = 20_000;

/** In how many ways k can be chosen out of n. */
export const chosen = (n: number, k: number): number => {
  let count = 1;
  for (let i = 1; i <= k; i++) count = (count * (n - k + i)) / i;
  return Math.round(count);
};

/** All blocks of k out of v, as bits, in order. */
export function* subsets(v: number, k: number): Generator<number> {
  let mask = 2 ** k - 1;
  while (mask < 2 ** v) {
    yield mask;
    const low = mask & -mask;
    const carried = mask + low;
    mask = carried | (((mask ^ carried) / low) >>> 2);
  }
}

/** The numbers of the bits that are set. */
export const membersOf = (mask: number): number[] => {
  const members: number[] = [];
  for (let m = mask, x = 0; m > 0; m >>>= 1, x++) if (m & 1) members.push(x);
  return members;
};

const moved = (mask: number, move: Move): number =>
  membersOf(mask).reduce((sum, x) => sum | (1 << (move[x] as number)), 0);

/** Everything that the moves make of one block. */
function orbitOf(mask: number, moves: readonly Move[]): number[] {
  const found = new Set([mask]);
  for (const each of found) for (const move of moves) found.add(moved(each, move));
  return [...found];
}

function orbitsOf(v: number, size: number, moves: readonly Move[]): number[][] {
  const seen = new Set<number>();
  const orbits: number[][] = [];
  for (const mask of subsets(v, size)) {
    if (seen.has(mask)) continue;
    const orbit = orbitOf(mask, moves);
    for (const each of orbit) seen.add(each);
    orbits.push(orbit);
  }
  return orbits;
}

/** The orbits of blocks that cover no pair too often; of those that cover alike, the first. */
function usableOrbits(v: number, k: number, lambda: number, moves: readonly Move[]) {
  const pairs = orbitsOf(v, 2, moves);
  const kindOf = new Map(pairs.flatMap((orbit, kind) => orbit.map((mask) => [mask, kind] as const)));
  const found = new Map<string, Orbit>();
  for (const orbit of orbitsOf(v, k, moves)) {
    const members = membersOf(orbit[0] as number);
    const counts = new Array<number>(pairs.length).fill(0);
    for (const [i, x] of members.entries())
      for (const y of members.slice(i + 1)) {
        const kind = kindOf.get((1 << x) | (1 << y)) as number;
        counts[kind] = (counts[kind] as number) + 1;
      }
    // every block of an orbit covers alike: so often the orbit, shared by the pairs of that kind
    const covers = counts.map((n, kind) => (n * orbit.length) / (pairs[kind] as number[]).length);
    const key = covers.join(",");
    if (covers.every((n) => n <= lambda) && !found.has(key))
      found.set(key, { blocks: orbit.map(membersOf), covers });
  }
  return { kinds: pairs.length, orbits: [...found.values()] };
}

/** Orbits, with repeats, that together cover every kind of pair λ times; null where none was found in time. */
function coverPairs(kinds: number, lambda: number, orbits: readonly Orbit[]): readonly Orbit[] | null {
  let steps = 0;
  const fits = (o: Orbit, left: readonly number[]) =>
    o.covers.every((n, kind) => n <= (left[kind] as number));
  const search = (left: readonly number[], usable: readonly Orbit[]): readonly Orbit[] | null => {
    if (left.every((n) => n === 0)) return [];
    if (++steps > mostSteps) return null;
    const open = usable.filter((o) => fits(o, left));
    const choices = left
      .map((n, kind) => (n === 0 ? null : open.filter((o) => (o.covers[kind] as number) > 0)))
      .filter((list) => list !== null)
      .sort((a, b) => a.length - b.length)[0] as readonly Orbit[];
    for (const [i, o] of choices.entries()) {
      const passed = new Set(choices.slice(0, i));
      const rest = left.map((n, kind) => n - (o.covers[kind] as number));
      const others = search(rest, passed.size === 0 ? open : open.filter((x) => !passed.has(x)));
      if (others !== null) return [o, ...others];
      if (steps > mostSteps) return null;
    }
    return null;
  };
  return search(new Array<number>(kinds).fill(lambda), orbits);
}

/**
 * A balanced incomplete block design with some symmetry: whole orbits of blocks under a group are put together so
 * that every kind of pair is covered λ times. Groups are tried from the largest down.
 *
 * @returns  the blocks, or null where no likely group gives one
 *
 * Source: E. S. Kramer and D. M. Mesner, Discrete Math. 15 (1976) 263
 */
export function blocksFromOrbits(v: number, k: number, lambda: number): Blocks | null {
  if (v > mostPoints || chosen(v, k) > mostSubsets) return null;
  const random: Random = randomFromSeed(`${v} ${k} ${lambda}`); // only the order of the search: what is found is the same each time
  for (const moves of likelyGroups(v)) {
    const { kinds, orbits } = usableOrbits(v, k, lambda, moves);
    const found = coverPairs(kinds, lambda, shuffled(orbits, random));
    if (found !== null) return found.flatMap((o) => o.blocks);
  }
  return null;
}
