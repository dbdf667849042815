import { DomainError } from "../../core/domain-error.ts";
import type { KnownTo } from "../../core/notebook/entry.ts";
import { leftOutReasons } from "../../core/notebook/kinds/trials.ts";
import { type CalendarDay, calendarDay, daysLater } from "../../core/pieces/calendar-day.ts";
import type { CoatMethod } from "../../core/views/waits.ts";
import { clockIn, instantOfDay } from "../bench/state.ts";
import type { SheetLine } from "./sheet.ts";

/** How the times are known: off a sheet filled in at the bench, or from memory and how well. */
export const sources = ["sheet", "exact", "about", "day"] as const;
export type Source = (typeof sources)[number];

/** The day that was chosen; undefined for one that cannot be read, or is still to come. */
export function dayChosen(
  choice: "today" | "yesterday" | "other",
  typed: string,
  today: string,
): CalendarDay | undefined {
  if (choice === "today") return calendarDay(today);
  if (choice === "yesterday") return daysLater(calendarDay(today), -1);
  try {
    const day = calendarDay(typed);
    return day > today ? undefined : day;
  } catch (error) {
    if (error instanceof DomainError) return undefined;
    throw error;
  }
}

/** Why a line was left out: of this coat alone, or the patch of the whole trial. */
export const whysOut = ["this time", ...leftOutReasons] as const;
export type WhyOut = (typeof whysOut)[number];

/** What was filled in on one line. */
export interface LineDraft {
  readonly on: boolean;
  readonly time: string;
  /** Another jar than the one that the key says. */
  readonly batch: string | undefined;
  readonly why: WhyOut;
  readonly note: string;
}
export const blankLine: LineDraft = { on: true, time: "", batch: undefined, why: "this time", note: "" };

export interface Evening {
  readonly day: CalendarDay;
  readonly source: Source;
  readonly method: CoatMethod;
  /** The sheets of the coats that were given, in order, each with what is filled in on it. */
  readonly sheets: readonly (readonly FilledLine[])[];
}

export interface FilledLine {
  readonly line: SheetLine;
  readonly draft: LineDraft;
}

export interface Shop {
  readonly now: string;
  readonly offset: (instant: string) => number;
  /** Nothing goes on before the boards were dealt their codes. */
  readonly laidOutAt: string;
}

/** What does not fit on a line. */
export type LineFault =
  | { readonly code: "not-a-time"; readonly typed: string }
  | { readonly code: "no-time" }
  | { readonly code: "ahead"; readonly at: string }
  | { readonly code: "too-early"; readonly after: string }
  | { readonly code: "coat-before"; readonly coat: number };

export interface TimedLine {
  readonly line: SheetLine;
  readonly draft: LineDraft;
  readonly at: string;
  readonly known: KnownTo;
}

export interface EveningRead {
  readonly on: readonly TimedLine[];
  readonly out: readonly TimedLine[];
  readonly faults: ReadonlyMap<string, LineFault>;
}

const minuteMs = 60_000;
const iso = (ms: number): string => new Date(ms).toISOString();

/** A night's small hours belong to the evening before. */
const nightEnds = "05:00";

/** The time of day of a line, or what does not fit; `above` is that of the line above. */
function clockOf(
  source: Source,
  typed: string,
  above: string | undefined,
): { readonly clock: string | undefined } | LineFault {
  if (source === "day") return { clock: undefined };
  if (typed.trim() !== "") {
    const clock = clockIn(typed);
    return clock === undefined ? { code: "not-a-time", typed: typed.trim() } : { clock };
  }
  return above === undefined && source !== "sheet" ? { code: "no-time" } : { clock: above };
}

/** The instant of a time of day. A day without an hour is written at its noon, or as soon after as `floor` allows. */
function placed(day: CalendarDay, shop: Shop, clock: string | undefined, floor: string): string | LineFault {
  const now = Date.parse(shop.now);
  const startOf = (one: CalendarDay, at: string) => instantOfDay(one, at, shop.offset);
  if (clock !== undefined) {
    const at = startOf(clock < nightEnds ? daysLater(day, 1) : day, clock);
    if (at > now) return { code: "ahead", at: iso(at) };
    return at < Date.parse(floor) ? { code: "too-early", after: floor } : iso(at);
  }
  if (startOf(day, "00:00") > now) return { code: "ahead", at: iso(startOf(day, "12:00")) };
  const at = Math.max(Math.min(startOf(day, "12:00"), now), Date.parse(floor) + minuteMs);
  const night = startOf(daysLater(day, 1), nightEnds);
  return at > Math.min(night, now) ? { code: "too-early", after: floor } : iso(at);
}

interface Had {
  readonly coats: number;
  readonly at: string;
}

function readLine(
  evening: Evening,
  shop: Shop,
  { line, draft }: FilledLine,
  had: Had,
  clock: string | undefined,
): TimedLine | LineFault {
  if (draft.on && had.coats !== line.coat - 1) return { code: "coat-before", coat: had.coats + 1 };
  const floor = draft.on && had.at > shop.laidOutAt ? had.at : shop.laidOutAt;
  const at = placed(evening.day, shop, clock, floor);
  if (typeof at !== "string") return at;
  const known = clock === undefined ? "day" : evening.source === "about" ? "hour" : "minute";
  return { line, draft, at, known };
}

/** Reads the lines down each sheet: a line without a time has that of the line above it. */
export function readEvening(evening: Evening, shop: Shop): EveningRead {
  const [on, out]: [TimedLine[], TimedLine[]] = [[], []];
  const faults = new Map<string, LineFault>();
  const since = new Map<string, Had>();
  for (const sheet of evening.sheets) {
    let above: string | undefined;
    for (const filled of sheet) {
      const { line, draft } = filled;
      if (line.state !== "waits") continue;
      const time = draft.on ? clockOf(evening.source, draft.time, above) : { clock: undefined };
      if (draft.on && "clock" in time) above = time.clock;
      const had = since.get(line.patch) ?? { coats: line.coats, at: line.lastAt ?? shop.laidOutAt };
      const read = "code" in time ? time : readLine(evening, shop, filled, had, time.clock);
      if ("code" in read) faults.set(line.key, read);
      else {
        (draft.on ? on : out).push(read);
        if (draft.on) since.set(line.patch, { coats: line.coat, at: read.at });
      }
    }
  }
  return { on, out, faults };
}
