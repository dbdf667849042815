import type { KnownTo } from "../../core/notebook/entry.ts";
import { leftOutReasons } from "../../core/notebook/kinds/trials.ts";
import type { CalendarDay } from "../../core/pieces/calendar-day.ts";
import type { CoatMethod } from "../../core/views/waits.ts";
import { clockIn } from "../bench/state.ts";
import { instantOn, type Shop, type TimeFault } from "./evening-time.ts";
import type { SheetLine } from "./sheet.ts";

/** How the times are known: off a sheet filled in at the bench, or from memory and how well. */
export const sources = ["sheet", "exact", "about", "day"] as const;
export type Source = (typeof sources)[number];

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
  /** Why in words, or what the pencil remarked. */
  readonly note: string;
}
export const blankLine: LineDraft = { on: true, time: "", batch: undefined, why: "this time", note: "" };

export interface Evening {
  readonly day: CalendarDay;
  readonly source: Source;
  readonly method: CoatMethod;
  /** The sheets of the coats that were given, in order, each with what is filled in on it. */
  readonly sheets: readonly FilledSheet[];
}

export interface FilledSheet {
  /** The time of day at the head of the sheet: about that of its first lines, where these have none. */
  readonly began: string | undefined;
  readonly lines: readonly FilledLine[];
}

export interface FilledLine {
  readonly line: SheetLine;
  readonly draft: LineDraft;
}

/** What does not fit on a line. */
export type LineFault =
  | TimeFault
  | { readonly code: "no-time" }
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

/** A time of day, and whether it is only about then; without one only the day is known. */
interface Clock {
  readonly clock: string | undefined;
  readonly rough: boolean;
}
const noClock: Clock = { clock: undefined, rough: true };

/** The time of day of a line, or what does not fit; `above` is that of the line above. */
function clockOf(source: Source, typed: string, above: Clock): Clock | LineFault {
  if (source === "day") return noClock;
  if (typed.trim() !== "") {
    const clock = clockIn(typed);
    return clock === undefined
      ? { code: "not-a-time", typed: typed.trim() }
      : { clock, rough: source === "about" };
  }
  return above.clock === undefined && source !== "sheet" ? { code: "no-time" } : above;
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
  { clock, rough }: Clock,
): TimedLine | LineFault {
  if (draft.on && had.coats !== line.coat - 1) return { code: "coat-before", coat: had.coats + 1 };
  const floor = draft.on && had.at > shop.laidOutAt ? had.at : shop.laidOutAt;
  const at = instantOn(evening.day, shop, clock, floor);
  if (typeof at !== "string") return at;
  const known = clock === undefined ? "day" : rough ? "hour" : "minute";
  return { line, draft, at, known };
}

/** Reads the lines down each sheet: a line without a time has that of the line above it. */
export function readEvening(evening: Evening, shop: Shop): EveningRead {
  const [on, out]: [TimedLine[], TimedLine[]] = [[], []];
  const faults = new Map<string, LineFault>();
  const since = new Map<string, Had>();
  for (const sheet of evening.sheets) {
    let above: Clock = { clock: sheet.began, rough: true };
    for (const filled of sheet.lines) {
      const { line, draft } = filled;
      if (line.state !== "waits") continue;
      const time = draft.on ? clockOf(evening.source, draft.time, above) : noClock;
      if (draft.on && "clock" in time) above = time;
      const had = since.get(line.patch) ?? { coats: line.coats, at: line.lastAt ?? shop.laidOutAt };
      const read = "code" in time ? time : readLine(evening, shop, filled, had, time);
      if ("code" in read) faults.set(line.key, read);
      else {
        (draft.on ? on : out).push(read);
        if (draft.on) since.set(line.patch, { coats: line.coat, at: read.at });
      }
    }
  }
  return { on, out, faults };
}
