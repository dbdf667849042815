import { type Maker, type Packing, type Side, stepsOfWork } from "./maker.ts";
import type { Project } from "./project.ts";
import { Serial } from "./serial.ts";

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

/**
 * Schedules orders from either side, and pushes what it makes to the other: what ends last goes last, what starts first first.
 * No push makes a schedule longer.
 *
 * Source: V. Valls, F. Ballestín and S. Quintanilla, "Justification and RCPSP", Eur. J. Oper. Res. 165 (2005) 375
 */
export class Turner implements Maker {
  readonly sides = ["start", "end"] as const;
  readonly #forth: Serial;
  readonly #back: Serial;

  /** `undefined` for a project with most-waits, or with waits that are shorter than the task before. */
  static of(project: Project): Turner | undefined {
    const forth = Serial.of(project);
    const back = Serial.of(backwards(project));
    return forth === undefined || back === undefined ? undefined : new Turner(forth, back);
  }

  private constructor(forth: Serial, back: Serial) {
    this.#forth = forth;
    this.#back = back;
  }

  get work(): number {
    return stepsOfWork * (this.#forth.work + this.#back.work);
  }

  byPriority(priority: Float64Array): Int32Array {
    return this.#forth.byPriority(priority);
  }

  ofStarts(starts: Int32Array, side: Side): Int32Array {
    return side === "start" ? this.#forth.ofStarts(starts) : this.#back.ofEnds(starts);
  }

  /** The schedule as it is once pushed to the start. */
  made(order: Int32Array, side: Side, packing?: Packing): Int32Array {
    const late =
      side === "end"
        ? this.#back.made(order, packing)
        : this.#back.made(this.#back.ofEnds(this.#forth.made(order, packing)));
    return this.#forth.made(this.#forth.ofEnds(late));
  }
}
