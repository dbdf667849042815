import { Temporal } from "temporal-polyfill";
import { clockForm } from "./time-lines.ts";

/** `+0100`, `-0330`; seconds only where there are any. */
function offsetText(nanoseconds: number): string {
  const seconds = Math.round(nanoseconds / 1e9);
  const parts = [3600, 60, 1].map((unit) => Math.floor(Math.abs(seconds) / unit) % (unit === 3600 ? 24 : 60));
  const [hours = "", minutes = "", rest = ""] = parts.map((part) => String(part).padStart(2, "0"));
  return `${seconds < 0 ? "-" : "+"}${hours}${minutes}${rest === "00" ? "" : rest}`;
}

function observance(name: string, onset: string, before: number, after: number): string[] {
  return [
    `BEGIN:${name}`,
    `DTSTART:${onset}`,
    `TZOFFSETFROM:${offsetText(before)}`,
    `TZOFFSETTO:${offsetText(after)}`,
    `END:${name}`,
  ];
}

/** The clocks as they stand after a change: DAYLIGHT where they went forward. */
function changeLines(change: Temporal.ZonedDateTime): string[] {
  const before = change.subtract({ nanoseconds: 1 }).offsetNanoseconds;
  const after = change.offsetNanoseconds;
  // the onset is told in the clock before it: RFC 5545, section 3.6.5
  const onset = change.toPlainDateTime().add({ nanoseconds: before - after });
  return observance(after > before ? "DAYLIGHT" : "STANDARD", clockForm(onset), before, after);
}

/**
 * A zone as a calendar file tells it: each change of its clocks from the last one before the years covered to the end of them.
 *
 * @param zone   IANA name
 * @param from   first moment [min since 1970 UTC]
 * @param until  last moment [min since 1970 UTC]
 * @returns      lines of a VTIMEZONE, unfolded
 * @throws DomainError never
 *
 * Valid:  moments from `from`'s year to `until`'s
 * Source: RFC 5545, section 3.6.5; IANA time zone database, as the platform has it
 */
export function zoneLines(zone: string, from: number, until: number): string[] {
  const at = (minutes: number) =>
    Temporal.Instant.fromEpochMilliseconds(minutes * 60_000).toZonedDateTimeISO(zone);
  const first = Temporal.ZonedDateTime.from({ timeZone: zone, year: at(from).year, month: 1, day: 1 });
  const end = Temporal.ZonedDateTime.from({ timeZone: zone, year: at(until).year + 1, month: 1, day: 1 });
  const changes: Temporal.ZonedDateTime[] = [];
  const last = first.add({ nanoseconds: 1 }).getTimeZoneTransition("previous");
  for (
    let change = last ?? first.getTimeZoneTransition("next");
    change !== null && Temporal.ZonedDateTime.compare(change, end) < 0;
    change = change.getTimeZoneTransition("next")
  )
    changes.push(change);
  const offset = first.offsetNanoseconds;
  return [
    "BEGIN:VTIMEZONE",
    `TZID:${zone}`,
    ...(last === null ? observance("STANDARD", "19700101T000000", offset, offset) : []),
    ...changes.flatMap(changeLines),
    "END:VTIMEZONE",
  ];
}
