import { Temporal } from "temporal-polyfill";
import { DomainError } from "../domain-error.ts";

const form = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}$/;

/** Wall-clock times of one zone as minutes of real time, and back: an hour that a clock change adds or takes is counted. */
export interface ShopClock {
  /** Minutes since 1970 UTC of a clock time such as 2026-10-05T18:00. */
  readonly minutes: (text: string, field: string) => number;
  readonly clock: (minutes: number) => string;
}

/**
 * The clock of a zone.
 *
 * @param zone  IANA name, as Europe/Berlin
 * @returns     both directions
 * @throws DomainError for a zone that is not known, a time that is none, and a time that the clocks skip in spring
 *
 * Valid:  years 1970 to 9999; of an hour that comes twice in autumn the first is meant
 * Source: IANA time zone database, as the platform has it
 */
export function shopClock(zone: string): ShopClock {
  const wrong = (field: string, value: string, because: string): DomainError =>
    new DomainError({ code: "wrong-type", field, value, because });
  try {
    Temporal.Instant.fromEpochMilliseconds(0).toZonedDateTimeISO(zone);
  } catch (error) {
    if (error instanceof RangeError) throw wrong("zone", zone, "A zone such as Europe/Berlin would do.");
    throw error;
  }
  const readPlain = (text: string, field: string): Temporal.PlainDateTime => {
    try {
      if (form.test(text)) return Temporal.PlainDateTime.from(text, { overflow: "reject" });
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
    }
    throw wrong(field, text, "A time such as 2026-10-05T18:00 would do.");
  };
  return {
    minutes: (text, field) => {
      const plain = readPlain(text, field);
      const zoned = plain.toZonedDateTime(zone, { disambiguation: "earlier" });
      if (!zoned.toPlainDateTime().equals(plain))
        throw wrong(field, text, `The clocks of ${zone} skip that time.`);
      return Math.round(zoned.epochMilliseconds / 60_000);
    },
    clock: (minutes) =>
      Temporal.Instant.fromEpochMilliseconds(minutes * 60_000)
        .toZonedDateTimeISO(zone)
        .toPlainDateTime()
        .toString({ smallestUnit: "minute" }),
  };
}
