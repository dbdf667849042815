import { type Random, shuffled } from "../random.ts";
import type { Laid } from "./lay-agenda.ts";

/** Times [min] moved about by chance, by up to a seventh of all there is. */
export function shaken(order: Int32Array, random: Random): Float64Array {
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  for (const x of order) {
    least = Math.min(least, x);
    most = Math.max(most, x);
  }
  const width = (most - least) * 0.3 * random() ** 2;
  return Float64Array.from(order, (x) => x + (random() - 0.5) * width);
}

/** The starts of a plan, with the tasks of each session gathered by what they take in the hand: fewer changes take less time. */
export function gathered({ agenda, net }: Laid, starts: Int32Array, random: Random): Float64Array {
  const turn = shuffled(
    net.change.map((_, kit) => kit),
    random,
  );
  const { windows } = agenda;
  let at = 0;
  const order = Float64Array.from(starts);
  for (const i of [...starts.keys()].sort((a, b) => (starts[a] as number) - (starts[b] as number))) {
    const start = starts[i] as number;
    while ((windows[at]?.[1] ?? Number.POSITIVE_INFINITY) <= start) at++;
    const [from, until] = windows[at] ?? [start, start + 1];
    const kit = net.kitOf[i] as number;
    if (kit < 0 || start < from) continue;
    const place = (turn[kit] as number) + (start - from) / (until - from);
    order[i] = from + ((until - from) * place) / turn.length;
  }
  return order;
}
