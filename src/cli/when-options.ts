import { instantSchema } from "../core/notebook/entry.ts";
import { refused } from "./cli-error.ts";

const ownZone = (): string => Intl.DateTimeFormat().resolvedOptions().timeZone;

/** The zone that was told, or this machine's. */
export function zoneOf(told: string | undefined): string {
  const zone = told ?? ownZone();
  try {
    new Intl.DateTimeFormat("en", { timeZone: zone });
    return zone;
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    const message = `--zone ${zone} is not a time zone. A name such as Europe/Berlin would do.`;
    throw refused({ code: "unknown-name", field: "--zone", message, value: zone, limits: null });
  }
}

/** The instant that was told, or this one. */
export function nowOf(told: string | undefined): string {
  const now = told ?? new Date().toISOString();
  if (instantSchema.safeParse(now).success) return now;
  const message = `--now ${now} is not an instant. UTC as 2026-10-05T18:30:00Z would do.`;
  throw refused({ code: "wrong-type", field: "--now", message, value: now, limits: null });
}
