import { type Random, randomFromSeed, randomIndex } from "../random.ts";
import type { Turner } from "./heuristic.ts";

interface Member {
  readonly starts: Int32Array;
  /** Tasks in the order of their starts. */
  readonly list: readonly number[];
}

const size = 100;
/** At most so many tasks of a child are packed anew, and at least. */
const packedAtMost = 18;
const packedAtLeast = 4;
const lengthOf = (starts: Int32Array): number => starts[starts.length - 1] as number;

/**
 * Schedules that breed: the order of one up to a place, then what another does next, then the rest; a stretch of it is packed
 * by what fills the resources best, and the child is pushed to its end and back. It takes the place of the parent that it
 * is more like, unless it is longer: so what is unlike stays, and can still be crossed.
 *
 * @param turner  schedules an order of tasks, and pushes a schedule back and forth
 * @param first   one schedule to begin with, n starts
 * @param seed    another one breeds others
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
  readonly #turner: Turner;
  readonly #members: Member[];
  readonly #random: Random;

  constructor(turner: Turner, first: Int32Array, seed: string) {
    this.#turner = turner;
    this.#random = randomFromSeed(seed);
    this.#members = [member(first)];
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
      const starts = this.#members.length < size ? this.#founder() : this.#child();
      if (starts !== undefined && lengthOf(starts) < length) return starts;
    }
    return undefined;
  }

  #founder(): Int32Array | undefined {
    const starts = this.#turner.fresh(this.#random);
    if (starts !== undefined) this.#members.push(member(starts));
    return starts;
  }

  #child(): Int32Array | undefined {
    const [m, f] = [randomIndex(this.#random, size), randomIndex(this.#random, size)];
    const [mother, father] = [this.#members[m] as Member, this.#members[f] as Member];
    const list = crossed(mother.list, father.list, this.#random);
    const from = randomIndex(this.#random, list.length);
    const until = from + packedAtLeast + randomIndex(this.#random, packedAtMost - packedAtLeast + 1);
    const starts = this.#turner.scheduled(ranks(list), { from, until, random: this.#random });
    if (starts === undefined) return undefined;
    const [toMother, toFather] = [apart(starts, mother.starts), apart(starts, father.starts)];
    const [place, parent] = toMother <= toFather ? [m, mother] : [f, father];
    const isNew = Math.min(toMother, toFather) > 0;
    if (isNew && lengthOf(starts) <= lengthOf(parent.starts)) this.#members[place] = member(starts);
    return starts;
  }
}

const member = (starts: Int32Array): Member => ({
  starts,
  list: [...starts.keys()].sort((a, b) => (starts[a] as number) - (starts[b] as number) || a - b),
});

/** Differences of the starts, summed. */
function apart(a: Int32Array, b: Int32Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += Math.abs((a[i] as number) - (b[i] as number));
  return sum;
}

function crossed(mother: readonly number[], father: readonly number[], random: Random): number[] {
  const n = mother.length;
  const from = randomIndex(random, n);
  const width = 1 + randomIndex(random, Math.max(1, n >> 1));
  const taken = new Uint8Array(n);
  const child: number[] = [];
  const take = (list: readonly number[], until: number): void => {
    for (const task of list) {
      if (child.length >= until) return;
      if (taken[task] === 1) continue;
      taken[task] = 1;
      child.push(task);
    }
  };
  take(mother, from);
  take(father, from + width);
  take(mother, n);
  return child;
}

function ranks(list: readonly number[]): Float64Array {
  const rank = new Float64Array(list.length);
  for (const [place, task] of list.entries()) rank[task] = place;
  return rank;
}
