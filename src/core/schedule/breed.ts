import { type Random, randomFromSeed, randomIndex } from "../random.ts";
import type { Founder } from "./heuristic.ts";
import type { Packing, Side } from "./maker.ts";

const size = 60;
/** At least so many tasks of a child are packed anew, and at most this share of all. */
const packedAtLeast = 4;
const packedShare = 0.75;
const lengthOf = (starts: Int32Array): number => starts[starts.length - 1] as number;

/**
 * Schedules that breed, from their start or from their end: the order of one up to a place, then what another does next, then
 * the rest; a stretch of it is packed by what fills the resources best, and the child is pushed to the other side and back.
 * It takes the place of the parent that it is more like, unless it is longer: so what is unlike stays, and can still be crossed.
 *
 * @param founder  makes the first ones, and what their orders come to
 * @param first    one schedule to begin with, n starts
 * @param seed     another one breeds others
 *
 * Valid:  projects without most-waits; with them, children that cannot be scheduled are lost, and nothing is packed
 * Source: S. Hartmann, "A competitive genetic algorithm for resource-constrained project scheduling", Naval Res. Logist. 45
 *         (1998) 733 (two-point crossover); V. Valls et al., Eur. J. Oper. Res. 185 (2008) 495 (with justification);
 *         Y. Kochetov and A. Stolyar, "Evolutionary local search with variable neighborhood for the resource constrained
 *         project scheduling problem", Proc. 3rd Int. Workshop of Computer Science and Information Technologies (2003)
 *         (blocks by the use of resources); S. W. Mahfoud, IlliGAL Report 95001 (1995) (crowding by likeness);
 *         all from memory
 */
export class Stock {
  readonly #founder: Founder;
  readonly #members: Int32Array[];
  readonly #random: Random;

  constructor(founder: Founder, first: Int32Array, seed: string) {
    this.#founder = founder;
    this.#random = randomFromSeed(seed);
    this.#members = [first];
  }

  /**
   * Breeds so many children.
   *
   * @param children  how many
   * @param length    of the shortest schedule that is known
   * @returns         starts (n) of the first child that is shorter, where there is one
   */
  grow(children: number, length: number): Int32Array | undefined {
    for (let i = 0; i < children; i++) {
      const starts = this.#members.length < size ? this.#founded() : this.#child();
      if (starts !== undefined && lengthOf(starts) < length) return starts;
    }
    return undefined;
  }

  #founded(): Int32Array | undefined {
    const starts = this.#founder.fresh(this.#random);
    if (starts !== undefined) this.#members.push(starts);
    return starts;
  }

  #child(): Int32Array | undefined {
    const random = this.#random;
    const { maker } = this.#founder;
    const [m, f] = [randomIndex(random, size), randomIndex(random, size)];
    const [mother, father] = [this.#members[m] as Int32Array, this.#members[f] as Int32Array];
    const side = maker.sides[randomIndex(random, maker.sides.length)] as Side;
    const order = crossed(maker.ofStarts(mother, side), maker.ofStarts(father, side), random);
    const starts = maker.made(order, side, stretch(order.length, random));
    if (starts === undefined) return undefined;
    const [toMother, toFather] = [apart(starts, mother), apart(starts, father)];
    const [place, parent] = toMother <= toFather ? [m, mother] : [f, father];
    const isNew = Math.min(toMother, toFather) > 0;
    if (isNew && lengthOf(starts) <= lengthOf(parent)) this.#members[place] = starts;
    return starts;
  }
}

function stretch(n: number, random: Random): Packing {
  const from = randomIndex(random, n);
  const more = Math.max(0, Math.round(packedShare * n) - packedAtLeast);
  return { from, until: from + packedAtLeast + randomIndex(random, more + 1), random };
}

/** Differences of the starts, summed. */
function apart(a: Int32Array, b: Int32Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += Math.abs((a[i] as number) - (b[i] as number));
  return sum;
}

function crossed(mother: Int32Array, father: Int32Array, random: Random): Int32Array {
  const n = mother.length;
  const from = randomIndex(random, n);
  const width = 1 + randomIndex(random, Math.max(1, n >> 1));
  const taken = new Uint8Array(n);
  const child = new Int32Array(n);
  let count = 0;
  const take = (order: Int32Array, until: number): void => {
    for (let k = 0; k < n && count < until; k++) {
      const task = order[k] as number;
      if (taken[task] === 1) continue;
      taken[task] = 1;
      child[count++] = task;
    }
  };
  take(mother, from);
  take(father, Math.min(n, from + width));
  take(mother, n);
  return child;
}
