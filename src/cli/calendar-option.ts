import { fallenAway } from "../core/calendar-file/fallen-away.ts";
import { calendarEvents, type EarlierCalendar } from "../core/calendar-file/read-events.ts";
import { type CalendarEvent, calendarFile } from "../core/calendar-file/write-calendar.ts";
import { sha256OfText } from "../core/notebook/withdrawal.ts";
import { refused } from "./cli-error.ts";
import type { OptionSpecs } from "./command.ts";
import type { Effects } from "./effects.ts";

/** Options of every command whose evenings can be taken to a calendar. */
export const calendarOptions = {
  calendar: {
    type: "string",
    value: "FILE",
    description: "the evenings as a calendar file too; one written before is brought up to date",
  },
  now: { type: "string", value: "INSTANT", description: "when it is written, UTC; now unless told" },
} as const satisfies OptionSpecs;

/** Of one name come the same ids each time, so that a calendar that took the evenings in moves them. */
export const idOfName = (kind: string, name: string): string =>
  `lacbench-${sha256OfText(`${kind}\n${name}`).slice(0, 32)}`;

function earlierIn(path: string, effects: Effects): EarlierCalendar | undefined {
  let text: string;
  try {
    text = effects.readFile(path);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "ENOENT") return undefined;
    throw error;
  }
  const earlier = calendarEvents(text);
  if (earlier !== undefined) return earlier;
  const message = `--calendar ${path} is there already, and is not a calendar file as Lacbench writes it. Another name would do.`;
  throw refused({ code: "contradiction", field: "--calendar", message, value: path, limits: null });
}

interface ToWrite {
  readonly path: string;
  readonly zone: string;
  readonly stamp: string;
  readonly events: readonly CalendarEvent[];
}

/** Writes a calendar file, and says what is in it. What an earlier one had and this has not is cancelled. */
export function writeCalendar({ path, zone, stamp, events }: ToWrite, effects: Effects): void {
  const earlier = earlierIn(path, effects);
  const gone = fallenAway(events, earlier?.events ?? []);
  const sequence = earlier === undefined ? 0 : earlier.sequence + 1;
  effects.writeFile(path, calendarFile({ zone, stamp, sequence, events: [...events, ...gone] }));
  const cancelled = gone.length === 0 ? "" : `, ${gone.length} that fell away cancelled`;
  effects.stderr(`${path}: ${events.length} in the calendar${cancelled}.\n`);
}
