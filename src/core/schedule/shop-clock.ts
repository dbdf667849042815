import { Temporal } from "temporal-polyfill";
import { DomainError } from "../domain-error.ts";

const form = /^(\d{4}-\d{2}-\d{2}T\d{2}:\d{2})([+-]\d{2}:\d{2}(?::\d{2})?)?$/;

/** Wall-clock times of one zone as minutes of real time, and back: an hour that a clock change adds or takes is counted. */
export interface ShopClock {
  /** Minutes since 1970 UTC of a clock time such as 2026-10-05T18:00. */
  readonly minutes: (text: string, field: string) => number;
  /** The same; a time that the clocks skip is taken as much later as they skip (RFC 5545, section 3.3.5). */
  readonly minutesPastSkip: (text: string, field: string) => number;
  /** The clock time of such minutes; the second time that an hour comes, with its offset. */
  readonly clock: (minutes: number) => string;
}

const wrong = (field: string, value: string, because: string): DomainError =>
  new DomainError({ code: "wrong-type", field, value, because });

/** What a reading gives; undefined where Temporal says that there is no such thing. */
function unlessNone<T>(read: () => T): T | undefined {
  try {
    return read();
  } catch (error) {
    if (error instanceof RangeError) return undefined;
    throw error;
  }
}

/**
 * The clock of a zone.
 *
 * @param zone  IANA name, as Europe/Berlin
 * @returns     both directions: `minutes` of what `clock` gives are the minutes that were given
 * @throws DomainError for a zone that is not known, a time that is none, and a time that the clocks skip in spring
 *
 * Valid:  years 1970 to 9999; of an hour that comes twice in autumn the first is meant, unless its offset is written
 *         after it: 2026-10-25T02:30+01:00
 * Source: IANA time zone database, as the platform has it
 */
export function shopClock(zone: string): ShopClock {
  if (unlessNone(() => Temporal.Instant.fromEpochMilliseconds(0).toZonedDateTimeISO(zone)) === undefined)
    throw wrong("zone", zone, "A zone such as Europe/Berlin would do.");
  const read = (text: string, field: string) => {
    const [, local = "", offset] = form.exec(text) ?? [];
    const plain = unlessNone(() => Temporal.PlainDateTime.from(local, { overflow: "reject" }));
    if (plain === undefined) throw wrong(field, text, "A time such as 2026-10-05T18:00 would do.");
    if (offset === undefined) return { plain, zoned: plain.toZonedDateTime(zone) };
    const zoned = unlessNone(() => Temporal.ZonedDateTime.from(`${text}[${zone}]`, { offset: "reject" }));
    if (zoned === undefined)
      throw wrong(field, text, `The clocks of ${zone} do not show it with that offset.`);
    return { plain, zoned };
  };
  const minutesOf = ({ epochMilliseconds }: Temporal.ZonedDateTime) => Math.round(epochMilliseconds / 60_000);
  return {
    minutes: (text, field) => {
      const { plain, zoned } = read(text, field);
      if (!zoned.toPlainDateTime().equals(plain))
        throw wrong(field, text, `The clocks of ${zone} skip that time.`);
      return minutesOf(zoned);
    },
    minutesPastSkip: (text, field) => minutesOf(read(text, field).zoned),
    clock: (minutes) => {
      const zoned = Temporal.Instant.fromEpochMilliseconds(minutes * 60_000).toZonedDateTimeISO(zone);
      const plain = zoned.toPlainDateTime();
      const isFirst = plain.toZonedDateTime(zone).epochMilliseconds === zoned.epochMilliseconds;
      return `${plain.toString({ smallestUnit: "minute" })}${isFirst ? "" : zoned.offset}`;
    },
  };
}
