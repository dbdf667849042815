import { type Random, randomFromSeed, randomIndex } from "../random.ts";
import type { Turner } from "./heuristic.ts";

interface Member {
  readonly starts: Int32Array;
  /** Tasks in the order of their starts. */
  readonly list: readonly number[];
}

const size = 40;
/** Populations that do not meet at first: what one has settled on, another has not. */
const islands = 4;
const lengthOf = (m: Member): number => m.starts[m.starts.length - 1] as number;

/**
 * Better schedules by breeding: the order of one up to a place, then what another does next, then the rest; each child is
 * scheduled, pushed to the end and back, and takes the place of the worst.
 *
 * @param turner    schedules an order of tasks, and pushes a schedule back and forth
 * @param first     one schedule to begin with, n starts
 * @param children  how many to breed
 * @param target    a length that cannot be beaten
 * @returns         the best starts (n)
 * @throws DomainError never
 *
 * Valid:  projects without most-waits; with them, children that cannot be scheduled are lost
 * Source: S. Hartmann, "A competitive genetic algorithm for resource-constrained project scheduling", Naval Res. Logist. 45
 *         (1998) 733 (two-point crossover); V. Valls et al., Eur. J. Oper. Res. 185 (2008) 495 (with justification)
 */
export function bredSchedule(
  turner: Turner,
  first: Int32Array,
  children: number,
  target: number,
): Int32Array {
  const random = randomFromSeed("breed");
  const each = Math.floor(children / (islands + 1));
  const met: Member[] = [member(first)];
  for (let island = 0; island < islands; island++) {
    const members: Member[] = [];
    for (let tries = 0; members.length < size && tries < 3 * size; tries++) {
      const starts = turner.fresh(random);
      if (starts !== undefined) members.push(member(starts));
    }
    if (members.length > 1) met.push(...bred(turner, members, each, target, random).slice(0, size / islands));
  }
  return (bred(turner, met, each, target, random)[0] as Member).starts;
}

/** Members after so many children, the best first. */
function bred(turner: Turner, from: Member[], children: number, target: number, random: Random): Member[] {
  const better = (a: Member, b: Member): number => lengthOf(a) - lengthOf(b);
  const members = from.toSorted(better);
  for (let i = 0; i < children && lengthOf(members[0] as Member) > target; i++) {
    const mother = chosen(members, random);
    const father = chosen(members, random);
    const starts = turner.scheduled(ranks(crossed(mother.list, father.list, random)));
    if (starts === undefined) continue;
    const worst = members.at(-1) as Member;
    const length = starts[starts.length - 1] as number;
    const isNew = !members.some((m) => lengthOf(m) === length && m.starts.every((s, k) => s === starts[k]));
    if (length > lengthOf(worst) || !isNew) continue;
    members[members.length - 1] = member(starts);
    members.sort(better);
  }
  return members;
}

const member = (starts: Int32Array): Member => ({
  starts,
  list: [...starts.keys()].sort((a, b) => (starts[a] as number) - (starts[b] as number) || a - b),
});

/** The better of two drawn at random. */
const chosen = (members: readonly Member[], random: Random): Member =>
  members[Math.min(randomIndex(random, members.length), randomIndex(random, members.length))] as Member;

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
  if (random() < 0.5) swapNeighbours(child, random);
  return child;
}

function swapNeighbours(list: number[], random: Random): void {
  for (let k = 0; k < 1 + randomIndex(random, 4); k++) {
    const i = randomIndex(random, list.length - 1);
    const j = Math.min(list.length - 1, i + 1 + randomIndex(random, 6));
    [list[i], list[j]] = [list[j] as number, list[i] as number];
  }
}

function ranks(list: readonly number[]): Float64Array {
  const rank = new Float64Array(list.length);
  for (const [place, task] of list.entries()) rank[task] = place;
  return rank;
}
