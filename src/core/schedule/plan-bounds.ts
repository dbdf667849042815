import type { Net } from "./net.ts";

type Windows = readonly (readonly [from: number, until: number])[];

/** Sums that tasks of these lengths can come to, as the longest of at most so many minutes. */
export function fillable(lengths: Iterable<number>, longest: number): Int32Array {
  const most = new Int32Array(longest + 1);
  const unique = [...new Set(lengths)].filter((x) => x > 0);
  for (let room = 1; room <= longest; room++) {
    const isFull = unique.some((x) => x <= room && most[room - x] === room - x);
    most[room] = isFull ? room : (most[room - 1] as number);
  }
  return most;
}

/**
 * A finish that no plan can beat: the hands-on work that cannot start before some moment fills the windows from there on,
 * and after the last of it some time must pass.
 *
 * @param net      n tasks
 * @param windows  from and until [min], in order
 * @param people   how many pairs of hands there are
 * @param hands    pairs of hands by task (n); 0 for what goes on without them
 * @param head     earliest starts [min] (n)
 * @param tail     least minutes from end to finish (n)
 * @returns        minutes; infinite when the windows do not hold the work
 * @throws DomainError never
 *
 * Valid:  hands-on tasks that each lie within a window
 * Source: J. Carlier, "The one-machine sequencing problem", Eur. J. Oper. Res. 11 (1982) 42, with the time between windows
 *         left out; for one person a window holds no more than a sum of task lengths (subset sum, with repetition), and
 *         changes between the kits that are more than the sessions of each
 */
export function finishBound(
  net: Net,
  windows: Windows,
  people: number,
  hands: readonly number[],
  head: Int32Array,
  tail: Int32Array,
): number {
  const { minutes } = net;
  let best = 0;
  for (let i = 0; i < minutes.length; i++)
    best = Math.max(best, (head[i] as number) + (minutes[i] as number) + (tail[i] as number));
  const workers = [...minutes.keys()].filter((i) => (hands[i] ?? 0) > 0 && (minutes[i] as number) > 0);
  const longest = Math.max(0, ...windows.map(([from, until]) => until - from));
  const most = fillable(people === 1 ? workers.map((i) => minutes[i] as number) : [1], longest);
  workers.sort((a, b) => (tail[b] as number) - (tail[a] as number));
  const entries = entriesOf(net);
  for (const from of new Set(workers.map((i) => head[i] as number))) {
    let work = 0;
    const kits = new Set<number>();
    workers.forEach((i, k) => {
      if ((head[i] as number) >= from) {
        work += (minutes[i] as number) * (hands[i] as number);
        kits.add(net.kitOf[i] as number);
      }
      const next = workers[k + 1];
      if (work === 0 || (next !== undefined && tail[next] === tail[i])) return;
      const changes = (session: number): number => changesBeyond(session * people, kits, entries) / people;
      best = Math.max(best, endOfWork(windows, most, from, work / people, changes) + (tail[i] as number));
    });
  }
  return best;
}

/** Minutes that it takes at the least to change to each kit in use from another; 0 for the others. */
export function entriesOf({ kitOf, change }: Net): number[] {
  const kits = [...new Set(kitOf)].filter((kit) => kit >= 0);
  return change.map((_, to) => {
    const into = kits.filter((from) => from !== to).map((from) => change[from]?.[to] as number);
    return kits.includes(to) && into.length > 0 ? Math.min(...into) : 0;
  });
}

/** Minutes of change that some kits take at the least, when so many of them are at hand to begin with. */
export const changesBeyond = (
  atHand: number,
  kits: ReadonlySet<number>,
  entries: readonly number[],
): number =>
  [...kits]
    .map((kit) => entries[kit] ?? 0)
    .sort((a, b) => b - a)
    .slice(atHand)
    .reduce((sum, minutes) => sum + minutes, 0);

/**
 * When so much work for each is done at the earliest, begun at a moment. In so many sessions no fewer changes are made than
 * there are kits more than people in sessions, since each begins a session with the first at hand.
 */
function endOfWork(
  windows: Windows,
  most: Int32Array,
  from: number,
  work: number,
  changes: (sessions: number) => number,
): number {
  let left = work;
  let room = 0;
  let sessions = 0;
  for (const [opens, until] of windows) {
    const begin = Math.max(opens, from);
    if (until <= begin) continue;
    const fills = most[until - begin] as number;
    const over = work + changes(++sessions) - room;
    if (left <= fills && over <= until - begin) return begin + Math.ceil(Math.max(1, left, over));
    left -= fills;
    room += until - begin;
  }
  return Number.POSITIVE_INFINITY;
}

/**
 * Sessions that no plan does without: along a chain of tasks each that cannot share a window with what went before takes
 * another; and the work must find room.
 *
 * @param net      n tasks
 * @param windows  from and until [min]
 * @param people   how many pairs of hands there are
 * @param hands    pairs of hands by task (n); 0 for what goes on without them
 * @returns        a count
 * @throws DomainError never
 *
 * Valid:  hands-on tasks that each lie within a window
 * Source: the definition: of two chains the one with more sessions, or with more time since the last began, is never sooner done
 */
export function sessionBound(net: Net, windows: Windows, people: number, hands: readonly number[]): number {
  const lengths = windows.map(([from, until]) => until - from).sort((a, b) => b - a);
  const work = net.minutes.reduce((sum, minutes, i) => sum + minutes * (hands[i] ?? 0), 0);
  const kits = new Set(net.kitOf.filter((_, i) => (hands[i] ?? 0) > 0));
  const entries = entriesOf(net);
  let needed = 0;
  for (let room = 0; needed < lengths.length; room += (lengths[needed++] as number) * people)
    if (work + changesBeyond(needed * people, kits, entries) <= room) break;
  return Math.max(needed, longestChain(net, lengths[0] ?? 0, hands));
}

/** Idle minutes that no plan does without: all people stay as long, and the work may not part evenly among them. */
export function idleBound({ minutes }: Net, people: number, hands: readonly number[]): number {
  const work = minutes.reduce((sum, m, i) => sum + m * (hands[i] ?? 0), 0);
  return people * Math.ceil(work / people) - work;
}

/** The most sessions along any chain of waits. */
function longestChain(net: Net, longest: number, hands: readonly number[]): number {
  const n = net.minutes.length;
  const isHands = (i: number): boolean => (hands[i] ?? 0) > 0;
  // sessions begun, and minutes from the start of the last one to the start of the task
  const sessions = Int32Array.from({ length: n }, (_, i) => (isHands(i) ? 1 : 0));
  const since = new Int32Array(n);
  for (let round = 0, moved = true; moved && round < n; round++) {
    moved = false;
    for (let i = 0; i < n; i++)
      for (const { other, least, otherWindow } of net.into[i] ?? []) {
        if (least < 0) continue;
        let count = sessions[other] as number;
        let after = count === 0 ? 0 : (since[other] as number) + least;
        if (
          isHands(i) &&
          (count === 0 || otherWindow === true || after + (net.minutes[i] as number) > longest)
        ) {
          count++;
          after = 0;
        }
        const known = sessions[i] as number;
        if (count < known || (count === known && after <= (since[i] as number))) continue;
        sessions[i] = count;
        since[i] = after;
        moved = true;
      }
  }
  return sessions.reduce((most, count) => Math.max(most, count), 0);
}
