import type { Crew } from "./crew.ts";
import type { Open } from "./engine/openings.ts";

/** start[to] ≥ start[from] + least, as seen from one of the two. */
export interface Arc {
  readonly other: number;
  readonly least: number;
  /** And the second lies in a later window than the first. */
  readonly otherWindow?: boolean;
}

/** An agenda for planning by lists: what is near each task, so that 2 000 tasks do not mean 4 million pairs. */
export interface Net {
  readonly minutes: Int32Array;
  /** When a task may start, in order of time. */
  readonly open: readonly (readonly Open[])[];
  /** By task: those that a lag leads to, and those it comes from. */
  readonly out: readonly (readonly Arc[])[];
  readonly into: readonly (readonly Arc[])[];
  /** By task: what it takes in the hand, of one person or of a crew; −1 where it takes no such hands. */
  readonly kitOf: Int32Array;
  /** Minutes from kit to kit. */
  readonly change: readonly Int32Array[];
  readonly crew: Crew | undefined;
  /** By task: resource and how much of it. */
  readonly needs: readonly (readonly (readonly [resource: number, demand: number])[])[];
  readonly capacities: readonly number[];
  readonly windows: readonly Open[];
  /** Nothing ends later. */
  readonly horizon: number;
}

/** A lag in a net. */
export interface NetLag extends Omit<Arc, "other"> {
  readonly from: number;
  readonly to: number;
}

/** Arcs by the task they come from, and by the task they lead to. */
export function arcsBothWays(n: number, lags: readonly NetLag[]): Pick<Net, "out" | "into"> {
  const out: Arc[][] = Array.from({ length: n }, () => []);
  const into: Arc[][] = Array.from({ length: n }, () => []);
  for (const { from, to, ...how } of lags) {
    if (from === to) continue;
    out[from]?.push({ other: to, ...how });
    into[to]?.push({ other: from, ...how });
  }
  return { out, into };
}

/** The earliest start that an arc leaves to its second task, by the start of the first. */
export function leastAfter({ windows }: Net, { least, otherWindow }: Arc, start: number): number {
  if (otherWindow !== true) return start + least;
  const closes = windows.find(([from, until]) => from <= start && start <= until)?.[1] ?? start;
  return Math.max(start + least, closes);
}

/** The latest start that an arc leaves to its first task, by the start of the second. */
export function mostBefore({ windows }: Net, { least, otherWindow }: Arc, start: number): number {
  if (otherWindow !== true) return start - least;
  const opens = windows.find(([from, until]) => from <= start && start <= until)?.[0] ?? start + 1;
  return Math.min(start - least, opens - 1);
}

/** The same plan run backwards from a moment: a start there is the end here, counted from it. */
export function mirroredStarts(net: Net, horizon: number, starts: ArrayLike<number>): Int32Array {
  return Int32Array.from(starts, (start, i) => horizon - start - (net.minutes[i] as number));
}

/** The same agenda run backwards from a moment. */
export function mirroredNet(net: Net, horizon: number): Net {
  const { minutes } = net;
  const turned = (arcs: readonly Arc[], i: number, sign: 1 | -1): Arc[] =>
    arcs.map(({ other, least, ...how }) => ({
      ...how,
      other,
      least: least + sign * ((minutes[other] as number) - (minutes[i] as number)),
    }));
  return {
    ...net,
    horizon,
    windows: net.windows.map(([from, until]): Open => [horizon - until, horizon - from]).reverse(),
    // of an arc i → j the mirror leads from j to i, later by how much longer j takes
    out: net.into.map((arcs, i) => turned(arcs, i, -1)),
    into: net.out.map((arcs, i) => turned(arcs, i, 1)),
    change: net.change.map((_, to) => Int32Array.from(net.change, (row) => row[to] as number)),
    open: net.open.map((open, i) => {
      const last = horizon - (minutes[i] as number);
      return open
        .map(([a, b]): Open => [last - Math.min(b, last), last - a])
        .filter(([a, b]) => b >= a)
        .reverse();
    }),
  };
}
