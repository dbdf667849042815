import { nextOpen } from "./hand-line.ts";
import { leastAfter, type Net } from "./net.ts";

/** Moving along by a minute a round is not worth more rounds than this: what is found is a bound at any time. */
const mostRounds = 500;

/**
 * The earliest start of each task by its lags and open times alone.
 *
 * @param net  n tasks
 * @returns    starts [min] (n), or nothing when a task finds no open time
 * @throws DomainError never
 *
 * Valid:  lags without a cycle of positive length
 * Source: R. Bellman, "On a routing problem", Q. Appl. Math. 16 (1958) 87, with calendars: C. Schwindt, "Resource allocation
 *         in project management" (2005), section 1.3
 */
export function earliestStarts(net: Net): Int32Array | undefined {
  const n = net.minutes.length;
  const head = new Int32Array(n);
  for (let round = 0; round < mostRounds; round++) {
    let moved = false;
    for (let i = 0; i < n; i++) {
      let least = head[i] as number;
      for (const arc of net.into[i] ?? [])
        least = Math.max(least, leastAfter(net, arc, head[arc.other] as number));
      const start = nextOpen(net.open[i] ?? [], least);
      if (!(start + (net.minutes[i] as number) <= net.horizon)) return undefined;
      if (start > (head[i] as number)) {
        head[i] = start;
        moved = true;
      }
    }
    if (!moved) break;
  }
  return head;
}

/** From the end of each task to the end of the plan, at least. */
export function tailsOf(net: Net): Int32Array {
  const n = net.minutes.length;
  const tail = new Int32Array(n);
  for (let round = 0; round < n; round++) {
    let moved = false;
    for (let i = n - 1; i >= 0; i--)
      for (const { other, least } of net.out[i] ?? []) {
        const after =
          least + (net.minutes[other] as number) + (tail[other] as number) - (net.minutes[i] as number);
        if (after <= (tail[i] as number)) continue;
        tail[i] = after;
        moved = true;
      }
    if (!moved) break;
  }
  return tail;
}

/** Tasks whose lags contradict each other, each waiting for the next; nothing when there are none. */
export function ringOf(net: Net): number[] | undefined {
  const n = net.minutes.length;
  const start = new Float64Array(n);
  const via = new Int32Array(n).fill(-1);
  for (let round = 0; round <= n; round++) {
    let moved = -1;
    for (let i = 0; i < n; i++)
      for (const { other, least } of net.out[i] ?? []) {
        if ((start[i] as number) + least <= (start[other] as number)) continue;
        start[other] = (start[i] as number) + least;
        via[other] = i;
        moved = other;
      }
    if (moved < 0) return undefined;
    if (round === n) return ringThrough(moved, via);
  }
  return undefined;
}

/** Walks back until a task comes again: from there on it is a ring. */
function ringThrough(from: number, via: Int32Array): number[] {
  const seen: number[] = [];
  let at = from;
  for (; !seen.includes(at); at = via[at] as number) seen.push(at);
  return seen.slice(seen.indexOf(at)).reverse();
}
