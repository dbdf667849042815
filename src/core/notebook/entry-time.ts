import type { NotebookEntry } from "./entry.ts";
import { epochMilliseconds } from "./instant.ts";

/** Written down when it happened, or off a clock: good enough for the minutes of a wait. */
export const isToTheMinute = (entry: NotebookEntry): boolean =>
  entry.remembered !== true && entry.happenedKnownTo === "minute";

/** Good enough for hours: neither remembered nor known only to the day. */
export const isToTheHour = (entry: NotebookEntry): boolean =>
  isToTheMinute(entry) || (entry.remembered !== true && entry.happenedKnownTo === "hour");

/** Whether the hour of the day is known at all, if only from memory. */
export const hasAnHour = (entry: NotebookEntry): boolean =>
  entry.happenedKnownTo === "minute" || entry.happenedKnownTo === "hour";

const hourMs = 3_600_000;
/** How much later than written it may have been: "about 19:00" is half an hour either way, a day is written at its noon. */
const laterBy = { minute: 0, hour: hourMs / 2, day: 12 * hourMs, unknown: 12 * hourMs } as const;

/** The latest that it can have happened, in milliseconds since 1970: what waits are counted from. Never after it was written down. */
export function latestMs(entry: NotebookEntry): number {
  const at = epochMilliseconds(entry.happened);
  const by = laterBy[entry.happenedKnownTo];
  return by === 0 ? at : Math.max(at, Math.min(at + by, epochMilliseconds(entry.recorded)));
}
