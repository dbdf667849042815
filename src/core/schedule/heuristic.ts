import { type Random, randomFromSeed } from "../random.ts";
import { Generator, type Packing, type Shape, shapeOf } from "./generate.ts";
import { unrelated } from "./longest-paths.ts";
import type { Project } from "./project.ts";

/** The same project run backwards: a start there is the end here, counted from the other side. */
function backwards(project: Project): Project {
  const n = project.durations.length;
  const mirror = (i: number): number => n - 1 - i;
  const duration = (i: number): number => project.durations[i] as number;
  return {
    durations: project.durations.toReversed(),
    demands: project.demands.toReversed(),
    capacities: project.capacities,
    lags: project.lags.map(({ from, to, least }) => ({
      from: mirror(to),
      to: mirror(from),
      least: least + duration(to) - duration(from),
    })),
  };
}

function mirrored(distance: readonly Int32Array[], durations: readonly number[]): Int32Array[] {
  const n = durations.length;
  return Array.from({ length: n }, (_, i) =>
    Int32Array.from({ length: n }, (_, j) => {
      const d = (distance[n - 1 - j] as Int32Array)[n - 1 - i] as number;
      return d === unrelated ? d : d + (durations[n - 1 - i] as number) - (durations[n - 1 - j] as number);
    }),
  );
}

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

/** Schedules orders of tasks; what it makes is pushed to the end and back where that can be done. */
export class Turner {
  readonly #forth: Generator;
  readonly #back: Generator | undefined;
  readonly #urgency: Float64Array;
  readonly #durations: readonly number[];

  constructor(shape: Shape, distance: readonly Int32Array[]) {
    const { project, horizon } = shape;
    this.#durations = project.durations;
    this.#forth = new Generator(shape);
    const canBeTurned = project.lags.every((lag) => lag.least >= 0);
    if (canBeTurned)
      this.#back = new Generator(shapeOf(backwards(project), mirrored(distance, project.durations), horizon));
    this.#urgency = latestStarts(distance);
  }

  get work(): number {
    return 0.03 * (this.#forth.work + (this.#back?.work ?? 0));
  }

  /** By latest starts, shaken a little or not at all. */
  fresh(random?: Random): Int32Array | undefined {
    return this.scheduled(random === undefined ? this.#urgency : shaken(this.#urgency, random));
  }

  /** @param packing  left out of account where there are most-waits */
  scheduled(priority: ArrayLike<number>, packing?: Packing): Int32Array | undefined {
    const starts = this.#forth.generate(priority, this.#back === undefined ? undefined : packing);
    if (starts === undefined || this.#back === undefined) return starts;
    const turned = this.#turned(starts, this.#back);
    const last = starts.length - 1;
    return turned !== undefined && (turned[last] as number) <= (starts[last] as number) ? turned : starts;
  }

  /** To the end and back: what ends last goes last, then what starts first goes first. */
  #turned(starts: Int32Array, back: Generator): Int32Array | undefined {
    const n = starts.length;
    const end = (list: Int32Array, i: number): number => (list[i] as number) + (this.#durations[i] as number);
    const late = back.generate(Int32Array.from(starts, (_, i) => -end(starts, n - 1 - i)));
    if (late === undefined) return undefined;
    // the mirrored end is the start counted from the end
    return this.#forth.generate(
      Int32Array.from(starts, (_, i) => -((late[n - 1 - i] as number) + (this.#durations[i] as number))),
    );
  }
}

/**
 * Good schedules quickly: tasks in the order of their latest starts, shaken a little, each schedule pushed to the end and back
 * to the beginning; later rounds shake the best order found.
 *
 * @param turner  schedules an order of tasks
 * @param rounds  how many orders to try
 * @param target  a length that cannot be beaten
 * @returns       the best starts (n), or none
 * @throws DomainError never
 *
 * Valid:  any project; one with most-waits is not pushed back and forth
 * Source: V. Valls, F. Ballestín and S. Quintanilla, "Justification and RCPSP", Eur. J. Oper. Res. 165 (2005) 375;
 *         R. Kolisch, "Serial and parallel resource-constrained project scheduling methods", ibid. 90 (1996) 320 (latest starts)
 */
export function goodSchedule(turner: Turner, rounds: number, target: number): Int32Array | undefined {
  const random = randomFromSeed("schedule");
  let best: Int32Array | undefined;
  for (let round = 0; round < rounds; round++) {
    const length = best?.at(-1) ?? Number.POSITIVE_INFINITY;
    if (length <= target) break;
    const isNear = best !== undefined && round % 2 === 1;
    const starts = isNear
      ? turner.scheduled(shaken(best as Int32Array, random))
      : turner.fresh(round === 0 ? undefined : random);
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
