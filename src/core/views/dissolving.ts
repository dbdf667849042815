import { DomainError } from "../domain-error.ts";
import { epochMilliseconds } from "../notebook/instant.ts";
import type { NotebookReader } from "../notebook/reader.ts";
import { type Settling, settling } from "../statistics/curves/settling.ts";
import type { TimedReading } from "../statistics/curves/settling-course.ts";
import { jarView } from "./jar.ts";

/** As good as dissolved when no more of the flakes is left: a convention of Lacbench's own. */
export const littleLeft = 0.02;
/** A share told by eye is off by so much at the least, one standard deviation: from memory. */
export const eyeDeviation = 0.05;
/** With fewer looks than this the course is taken as one of first order, which has one figure less to fix. */
const looksForShape = 4;
const hourMs = 3_600_000;
/** Beyond this an upper limit says no more than that there is none. */
const noEndH = 24 * 60;

/** How far the flakes of a jar have dissolved, by the shares that its looks told. */
export interface Dissolving {
  /** At the last look that told one, 0 to 1. */
  readonly share: number;
  /** Looks that told one. */
  readonly seen: number;
  /** When little is left, UTC, with its 95 % interval; null where the looks do not fix it. */
  readonly done: { readonly at: string; readonly from: string; readonly to: string | null } | null;
}

/** All of the flakes is there at the start, and none at the end. */
function courseOf(readings: readonly TimedReading[]): Settling | null {
  const shape = readings.length < looksForShape ? "first-order" : "weibull";
  try {
    return settling(readings, shape, { start: 1, end: 0 }, eyeDeviation);
  } catch (error) {
    if (error instanceof DomainError) return null; // too few, all alike, or no course through them
    throw error;
  }
}

/** The course of a jar in which something is dissolving; null once it is done, and while no look told a share. */
export const dissolvingView = (read: NotebookReader, id: string): Dissolving | null =>
  read.derive(`dissolving:${id}`, (r) => {
    const jar = jarView(r, id);
    const over = jar?.emptied !== null || jar.children.length > 0 || jar.looks.ready?.doneByH !== null;
    if (jar === null || over) return null;
    const readings = jar.looks.looks.flatMap(({ hours, share }) =>
      share === null ? [] : [{ time: hours, value: share }],
    );
    const last = readings.at(-1);
    if (last === undefined) return null;
    const atHour = (hours: number): string =>
      new Date(epochMilliseconds(jar.madeAt) + hours * hourMs).toISOString();
    const done = courseOf(readings)?.timeUntilLeft(littleLeft);
    const [from, to] = done?.interval ?? [0, 0];
    // What was seen at the last look stands against a curve that says it is over.
    const notBefore = (hours: number): number =>
      last.value > littleLeft ? Math.max(hours, last.time) : hours;
    return {
      share: last.value,
      seen: readings.length,
      done:
        done === undefined || !(done.value <= noEndH)
          ? null
          : {
              at: atHour(notBefore(done.value)),
              from: atHour(notBefore(from)),
              to: to <= noEndH ? atHour(notBefore(to)) : null,
            },
    };
  });
