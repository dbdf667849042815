import type { Ready, ReadyGroup, WatchedJarView } from "../../core/views/ready.ts";

/** A strip's hours from nought to `until`, with its marks. */
export interface StripScale {
  readonly until: number;
  readonly marks: readonly number[];
}

const steps = [1, 2, 3, 6, 12, 24, 48, 96, 168];

/** Hours that hold every look, with four or five marks. */
export function stripScale(ready: Ready): StripScale {
  const hours = ready.groups.flatMap((group) =>
    group.jars.flatMap((jar) => jar.looks.map((look) => look.hours)),
  );
  const most = Math.max(...hours, 4);
  const step = steps.find((s) => most / s <= 4.5) ?? Math.ceil(most / 4 / 24) * 24;
  const count = Math.ceil(most / step);
  return { until: count * step, marks: Array.from({ length: count + 1 }, (_, i) => i * step) };
}

/** One line of the strip: a jar's looks, and the box that it became ready in. */
export interface StripLine {
  readonly jar: WatchedJarView;
  readonly notYet: readonly number[];
  readonly ready: number | null;
  readonly box: readonly [number, number] | null;
}

export function lineOf(jar: WatchedJarView): StripLine {
  const until = jar.doneByH ?? Number.POSITIVE_INFINITY;
  return {
    jar,
    notYet: jar.looks.map((look) => look.hours).filter((hours) => hours < until),
    ready: jar.doneByH,
    box: jar.doneByH === null ? null : [jar.notYetH, jar.doneByH],
  };
}

/** Half the interval on each side, as it is said: `8 h, between 6 and 10`. */
export const hoursOf = (group: ReadyGroup) => ({
  median: group.medianH === null ? null : Math.round(group.medianH),
  from: group.intervalH === null ? null : Math.round(group.intervalH[0]),
  to: group.intervalH === null ? null : Math.round(group.intervalH[1]),
  notBy: Math.max(...group.jars.map((jar) => jar.notYetH)),
  everReady: group.jars.some((jar) => jar.doneByH !== null),
});
