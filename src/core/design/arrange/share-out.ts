import { type Random, randomIndex, shuffled } from "../../random.ts";

/** A block with its places, and which treatments may stand there. */
export interface Block {
  readonly places: number;
  readonly allowed: readonly number[];
}

/** Fresh starts for the exchange: enough for every small catalogue design tried, and a few milliseconds. */
const starts = 24;

/**
 * Which treatments stand on which block. A block that has places for all of them holds each equally often; what is
 * left over, and blocks that are too small, are filled so that the treatments come equally often and meet each
 * other equally often, as nearly as exchanges can bring it.
 *
 *     minimise  b²·Σ_t r_t²  +  Σ_{t<u} λ_tu²      r_t how often t stands, λ_tu how often t and u meet in a block
 *
 * @param blocks      b, each with its places and allowed treatments (at least one)
 * @param treatments  how many there are, scalar
 * @returns           the treatments of each block with repeats, in no order, b lists
 *
 * Accuracy: meets the least possible spread for most small cases, not certified; see the tests for catalogue designs
 * Source:   (M,S)-optimality, J. A. Eccleston and A. Hedayat, Ann. Statist. 2 (1974) 1238
 */
export function shareOut(
  blocks: readonly Block[],
  treatments: number,
  random: Random,
): readonly (readonly number[])[] {
  const base = blocks.map((b) => Math.floor(b.places / b.allowed.length));
  const extra = blocks.map((b, i) => b.places - (base[i] as number) * b.allowed.length);
  const full = new Array<number>(treatments).fill(0);
  blocks.forEach((b, i) => {
    for (const t of b.allowed) full[t] = (full[t] as number) + (base[i] as number);
  });
  let best = fillExtras(blocks, extra, full, random);
  if (extra.some((k) => k > 0))
    for (let s = 1; s < starts; s++) {
      const next = fillExtras(blocks, extra, full, random);
      if (next.cost < best.cost) best = next;
    }
  return blocks.map((b, i) => [
    ...b.allowed.flatMap((t) => new Array<number>(base[i] as number).fill(t)),
    ...(best.held[i] as readonly number[]),
  ]);
}

interface Fill {
  readonly held: readonly (readonly number[])[];
  readonly cost: number;
}

/** One start: the least used first, ties by lot, then exchanges until none helps. */
function fillExtras(
  blocks: readonly Block[],
  extra: readonly number[],
  full: readonly number[],
  random: Random,
): Fill {
  const used = [...full];
  const held = blocks.map(() => [] as number[]);
  for (const i of shuffled([...blocks.keys()], random)) {
    const byUse = shuffled((blocks[i] as Block).allowed, random).sort(
      (a, b) => (used[a] as number) - (used[b] as number),
    );
    held[i] = byUse.slice(0, extra[i]);
    for (const t of held[i] as number[]) used[t] = (used[t] as number) + 1;
  }
  const state = new Meetings(held, used);
  improve(state, blocks, random);
  return { held: state.held, cost: state.cost() };
}

/** The treatments held by each block with how often each stands and each pair meets, kept up to date by exchanges. */
class Meetings {
  readonly held: number[][];
  private readonly used: number[];
  private readonly met: number[][];
  private readonly weight: number;
  constructor(held: number[][], used: number[]) {
    this.held = held;
    this.used = used;
    this.weight = held.length ** 2;
    this.met = used.map(() => new Array<number>(used.length).fill(0));
    for (const block of held)
      for (const t of block)
        for (const u of block)
          if (t !== u) (this.met[t] as number[])[u] = ((this.met[t] as number[])[u] as number) + 1;
  }
  private meet(block: number, t: number, by: number): void {
    for (const u of this.held[block] as number[]) {
      if (u === t) continue;
      const [a, b] = [this.met[t] as number[], this.met[u] as number[]];
      a[u] = (a[u] as number) + by;
      b[t] = (b[t] as number) + by;
    }
  }
  cost(): number {
    const uses = this.used.reduce((sum, r) => sum + r * r, 0);
    const pairs = this.met.reduce((sum, row) => sum + row.reduce((s, n) => s + n * n, 0), 0);
    return this.weight * uses + pairs / 2;
  }
  /** Puts `to` where `from` stood in a block. */
  replace(block: number, from: number, to: number): void {
    const here = this.held[block] as number[];
    this.meet(block, from, -1);
    here[here.indexOf(from)] = to;
    this.meet(block, to, 1);
    this.used[from] = (this.used[from] as number) - 1;
    this.used[to] = (this.used[to] as number) + 1;
  }
  /** What the cost would change by; Σr² and Σλ² are both differences of squares. */
  gain(block: number, from: number, to: number): number {
    const r = (t: number) => this.used[t] as number;
    const l = (t: number, u: number) => (this.met[t] as number[])[u] as number;
    let pairs = 0;
    for (const u of this.held[block] as number[]) {
      if (u !== from) pairs += 2 * l(to, u) + 1 - (2 * l(from, u) - 1);
    }
    return this.weight * (2 * (r(to) - r(from)) + 2) + pairs;
  }
}

function improve(state: Meetings, blocks: readonly Block[], random: Random): void {
  for (let rounds = 0; rounds < 200; rounds++) {
    if (!replaceOne(state, blocks, random) && !swapTwo(state, blocks, random)) return;
  }
}

const mayTake = (state: Meetings, blocks: readonly Block[], block: number, t: number): boolean =>
  (blocks[block] as Block).allowed.includes(t) && !(state.held[block] as number[]).includes(t);

function replaceOne(state: Meetings, blocks: readonly Block[], random: Random): boolean {
  let helped = false;
  for (const i of shuffled([...blocks.keys()], random)) {
    for (const from of [...(state.held[i] as number[])]) {
      const to = (blocks[i] as Block).allowed.find(
        (t) => mayTake(state, blocks, i, t) && state.gain(i, from, t) < 0,
      );
      if (to === undefined) continue;
      state.replace(i, from, to);
      helped = true;
    }
  }
  return helped;
}

/** Two blocks give each other a treatment: how often each stands is kept, who meets whom changes. */
function swapTwo(state: Meetings, blocks: readonly Block[], random: Random): boolean {
  let helped = false;
  const order = shuffled([...blocks.keys()], random);
  for (const i of order)
    for (const j of order)
      if (i < j)
        for (const x of [...(state.held[i] as number[])])
          for (const y of [...(state.held[j] as number[])])
            if (
              mayTake(state, blocks, i, y) &&
              mayTake(state, blocks, j, x) &&
              (state.held[i] as number[]).includes(x)
            )
              helped = trySwap(state, i, x, j, y, random) || helped;
  return helped;
}

function trySwap(state: Meetings, i: number, x: number, j: number, y: number, random: Random): boolean {
  const before = state.gain(i, x, y);
  state.replace(i, x, y);
  const total = before + state.gain(j, y, x);
  // an equal exchange is taken now and then, to walk off a plateau
  if (total < 0 || (total === 0 && randomIndex(random, 8) === 0)) {
    state.replace(j, y, x);
    return total < 0;
  }
  state.replace(i, y, x);
  return false;
}
