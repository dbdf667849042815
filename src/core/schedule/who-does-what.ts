import type { Block, Crew } from "./crew.ts";

/** A block of a plan with its place in time. */
interface Placed extends Block {
  readonly start: number;
}

const none = -1;

/**
 * Who of a crew does what in a plan: whoever is wished where that can be, else who has the pad in the hand already. Blocks
 * that one person can do one after another form chains, and a plan that can be done at all has no more chains than people.
 *
 * @param crew    n tasks in blocks
 * @param starts  when each task starts [min] (n)
 * @param wished  by task, from 0; −1 for no wish (n)
 * @returns       by task, from 0; −1 where it takes no hands (n)
 * @throws DomainError never
 *
 * Valid:  plans that leave everybody time to change
 * Source: fewest chains of a partial order by matching: D. R. Fulkerson, "Note on Dilworth's decomposition theorem for
 *         partially ordered sets", Proc. AMS 7 (1956) 701; H. W. Kuhn, Naval Res. Logist. Q. 2 (1955) 83 (augmenting paths)
 */
export function whoDoesWhat(crew: Crew, starts: ArrayLike<number>, wished?: ArrayLike<number>): Int32Array {
  const placed = placedBlocks(crew, starts);
  const wish = ({ tasks, doneBy }: Placed): number =>
    doneBy >= 0 ? doneBy : (wished?.[tasks[0] as number] ?? none);
  const chains = new Chains(crew, placed, placed.map(wish));
  const whose = namedChains(chains.fewest(), placed.map(wish), placed, crew.people);
  const ofBlock = new Map(placed.flatMap(({ tasks }, i) => tasks.map((task) => [task, whose[i] as number])));
  return crew.blockOf.map((block, task) =>
    block < 0 ? none : (ofBlock.get(task) ?? (crew.blocks[block]?.doneBy as number)),
  );
}

/** Blocks in order of time; of what somebody has begun only the last, which all else comes after. */
function placedBlocks({ blocks }: Crew, starts: ArrayLike<number>): Placed[] {
  const last = new Map<number, Placed>();
  const left: Placed[] = [];
  for (const block of blocks) {
    const placed = { ...block, start: starts[block.tasks[0] as number] as number };
    if (block.doneBy < 0) left.push(placed);
    else if (endOf(placed) > endOf(last.get(block.doneBy))) last.set(block.doneBy, placed);
  }
  return [...last.values(), ...left].sort((a, b) => a.start - b.start);
}

const endOf = (placed: Placed | undefined): number =>
  placed === undefined ? Number.NEGATIVE_INFINITY : placed.start + placed.minutes;

class Chains {
  readonly #crew: Crew;
  readonly #placed: readonly Placed[];
  readonly #wish: readonly number[];
  readonly #next: Int32Array;
  readonly #before: Int32Array;

  constructor(crew: Crew, placed: readonly Placed[], wish: readonly number[]) {
    this.#crew = crew;
    this.#placed = placed;
    this.#wish = wish;
    this.#next = new Int32Array(placed.length).fill(none);
    this.#before = new Int32Array(placed.length).fill(none);
  }

  /** The block before each in its chain; −1 for the first. */
  fewest(): Int32Array {
    let chains = this.#oneAfterAnother();
    for (const [i, before] of this.#before.entries()) {
      if (chains <= this.#crew.people) break;
      if (before === none && this.#joins(i, new Set())) chains--;
    }
    return this.#before;
  }

  /** One person can do i and then j. */
  #canFollow(i: number, j: number): boolean {
    const [a, b] = [this.#placed[i] as Placed, this.#placed[j] as Placed];
    const change = this.#crew.change[a.kit]?.[b.kit] as number;
    return b.doneBy < 0 && i !== j && endOf(a) + change <= b.start;
  }

  /** Each block to the chain that suits it best, or to somebody without work yet; gives how many chains there are. */
  #oneAfterAnother(): number {
    const ends: number[] = [];
    this.#placed.forEach((_, j) => {
      const can = [...ends.keys()].filter((chain) => this.#canFollow(ends[chain] as number, j));
      const best = can.reduce(
        (a, b) => (this.#worth(ends[b], j) > this.#worth(ends[a], j) ? b : a),
        can[0] ?? none,
      );
      const suits = this.#worth(ends[best], j) >= (this.#wish[j] === none ? 1 : 2);
      if (best === none || (!suits && ends.length < this.#crew.people)) ends.push(j);
      else {
        this.#join(ends[best] as number, j);
        ends[best] = j;
      }
    });
    return ends.length;
  }

  /** 2 for the person who is wished, 1 for the pad at hand. */
  #worth(i: number | undefined, j: number): number {
    if (i === undefined) return 0;
    const isWished = this.#wish[j] !== none && this.#wish[i] === this.#wish[j];
    return (isWished ? 2 : 0) + (this.#placed[i]?.kit === this.#placed[j]?.kit ? 1 : 0);
  }

  #join(i: number, j: number): void {
    this.#next[i] = j;
    this.#before[j] = i;
  }

  /** Finds the first of a chain a place after some block, whose next finds another; false when there is none. */
  #joins(j: number, seen: Set<number>): boolean {
    for (let i = 0; i < this.#placed.length; i++) {
      if (seen.has(i) || !this.#canFollow(i, j)) continue;
      seen.add(i);
      const next = this.#next[i] as number;
      if (next !== none && !this.#joins(next, seen)) continue;
      this.#join(i, j);
      return true;
    }
    return false;
  }
}

/** By block who does its chain: who began it or is wished for the first of it, or whoever is left. */
function namedChains(
  before: Int32Array,
  wish: readonly number[],
  placed: readonly Placed[],
  people: number,
): Int32Array {
  const begun = new Set(placed.map((b) => b.doneBy));
  const free = Array.from({ length: people }, (_, who) => who).filter((who) => !begun.has(who));
  const taken = (wished: number): number => free.splice(Math.max(0, free.indexOf(wished)), 1)[0] as number;
  const whose = new Int32Array(placed.length);
  placed.forEach(({ doneBy }, i) => {
    const from = before[i] as number;
    if (from !== none) whose[i] = whose[from] as number;
    else whose[i] = doneBy >= 0 ? doneBy : taken(wish[i] as number);
  });
  return whose;
}
