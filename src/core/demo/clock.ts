import { Temporal } from "temporal-polyfill";

/** Wall-clock times around an instant, in one zone: the demo's evenings are evenings there. */
export interface DemoClock {
  /** The UTC instant of a clock time, so many days from the last day: `at(-3, "18:40")`. */
  readonly at: (day: number, time: string) => string;
  /** The calendar day, `YYYY-MM-DD`. */
  readonly day: (day: number) => string;
}

/**
 * A clock whose day 0 is the day of `now` in that zone.
 *
 * @param now   UTC instant
 * @param zone  IANA name
 */
export function demoClock(now: string, zone: string): DemoClock {
  const today = Temporal.Instant.from(now).toZonedDateTimeISO(zone).toPlainDate();
  const date = (day: number) => today.add({ days: day });
  return {
    day: (day) => date(day).toString(),
    at: (day, time) =>
      date(day)
        .toZonedDateTime({ timeZone: zone, plainTime: Temporal.PlainTime.from(time) })
        .toInstant()
        .toString({ fractionalSecondDigits: 3 }),
  };
}
