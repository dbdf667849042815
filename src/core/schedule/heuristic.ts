import { type Random, randomFromSeed } from "../random.ts";
import type { Maker } from "./maker.ts";

/** Latest starts when the last task is to start at 0: the usual first guess of what is urgent. What cannot move comes first. */
function latestStarts(distance: readonly Int32Array[]): Float64Array {
  const n = distance.length;
  const first = distance[0] as Int32Array;
  return Float64Array.from({ length: n }, (_, i) => {
    const row = distance[i] as Int32Array;
    const isFixed = (row[0] as number) === -(first[i] as number);
    return isFixed ? -(2 ** 29) : -Math.max(row[n - 1] as number, -(first[n - 1] as number));
  });
}

/** Schedules in the order of the latest starts, that order shaken or not. */
export class Founder {
  readonly maker: Maker;
  readonly #urgency: Float64Array;

  constructor(maker: Maker, distance: readonly Int32Array[]) {
    this.maker = maker;
    this.#urgency = latestStarts(distance);
  }

  fresh(random?: Random): Int32Array | undefined {
    return this.#made(random === undefined ? this.#urgency : shaken(this.#urgency, random));
  }

  /** In the order of another schedule, shaken. */
  near(starts: Int32Array, random: Random): Int32Array | undefined {
    return this.#made(shaken(starts, random));
  }

  #made(priority: Float64Array): Int32Array | undefined {
    return this.maker.made(this.maker.byPriority(priority), "start");
  }
}

/**
 * Good schedules quickly: tasks in the order of their latest starts, shaken a little, each schedule pushed to the end and back
 * to the beginning; later rounds shake the best order found.
 *
 * @param founder  schedules orders of urgency
 * @param rounds   how many orders to try
 * @param target   a length that cannot be beaten
 * @returns        the best starts (n), or none
 * @throws DomainError never
 *
 * Valid:  any project; one with most-waits is not pushed back and forth
 * Source: V. Valls, F. Ballestín and S. Quintanilla, "Justification and RCPSP", Eur. J. Oper. Res. 165 (2005) 375;
 *         R. Kolisch, "Serial and parallel resource-constrained project scheduling methods", ibid. 90 (1996) 320 (latest starts)
 */
export function goodSchedule(founder: Founder, rounds: number, target: number): Int32Array | undefined {
  const random = randomFromSeed("schedule");
  let best: Int32Array | undefined;
  for (let round = 0; round < rounds; round++) {
    const length = best?.at(-1) ?? Number.POSITIVE_INFINITY;
    if (length <= target) break;
    const isNear = best !== undefined && round % 2 === 1;
    const starts = isNear
      ? founder.near(best as Int32Array, random)
      : founder.fresh(round === 0 ? undefined : random);
    if (starts !== undefined && (starts.at(-1) as number) < length) best = starts;
  }
  return best;
}

function shaken(order: ArrayLike<number>, random: Random): Float64Array {
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < order.length; i++) {
    if ((order[i] as number) <= -(2 ** 29)) continue;
    least = Math.min(least, order[i] as number);
    most = Math.max(most, order[i] as number);
  }
  const width = (most - least) * 0.3 * random();
  return Float64Array.from(order, (x) => x + (random() - 0.5) * width);
}
