import type { Accessor } from "solid-js";
import type { ScheduleStep } from "../../core/notebook/kinds/pieces.ts";
import { calendarDay, dayFromNumber, dayNumber } from "../../core/pieces/calendar-day.ts";
import { coatNumbers } from "../../core/pieces/planned-evenings.ts";
import type { ShopWindow } from "../../core/pieces/shop-windows.ts";
import { type CoatOn, carriedOn } from "../../core/registry/piece-carried-on.ts";
import type { ScheduleBody } from "../../core/registry/piece-schedule.ts";
import type { PieceView } from "../../core/views/piece.ts";
import type { OpenBook } from "../book-store/open-book.ts";
import { now } from "../shell/now.ts";
import { clock, dayOf } from "../words/time.ts";
import { clockOf } from "./plan-words.ts";

type Schedule = NonNullable<PieceView["schedule"]>;
export type CarryingOn = ReturnType<typeof createCarryingOn>;

/** Minutes since 1970 by the clock on the wall. */
const wallMinute = (day: string, at: string): number => {
  const [hours, minutes] = at.split(":").map(Number);
  return dayNumber(calendarDay(day)) * 1440 + (hours ?? 0) * 60 + (minutes ?? 0);
};
const wallText = (minute: number): string => {
  const day = Math.floor(minute / 1440);
  return `${dayFromNumber(day)}T${clockOf(minute - day * 1440)}`;
};

/** So much later than planned, and the plan is no longer a plan. */
const lateMinutes = 60;

/** The day on which the hands-on work of a plan ends; null where its evenings do not reach. */
export const endOf = (steps: readonly ScheduleStep[]): string | null =>
  steps.some((step) => step.day === undefined)
    ? null
    : (steps.findLast((step) => step.at !== undefined)?.day ?? null);

/** What has become of a kept plan: what is behind, what is next, and the rest planned anew. */
export function createCarryingOn(
  book: OpenBook,
  piece: Accessor<PieceView>,
  schedule: Accessor<Schedule | null>,
  on: Accessor<ReadonlyMap<number, { readonly at: string }>>,
) {
  const steps = () => schedule()?.steps ?? [];
  const coats = () => coatNumbers(steps());
  const lastOn = () => Math.max(0, ...on().keys());
  const wall = () => {
    const [day, at] = [dayOf(now(), book.zone), clock(now(), book.zone)];
    const minutes = wallMinute(day, at);
    return { day, minute: minutes - wallMinute(day, "00:00"), minutes, text: `${day}T${at}` };
  };
  /** Behind the last coat that is on, all is done. */
  const isDone = (step: ScheduleStep): boolean => {
    const after = steps().slice(steps().indexOf(step));
    return after.some((later) => (coats().get(later) ?? Number.POSITIVE_INFINITY) <= lastOn());
  };
  const planned = (step: ScheduleStep): number | undefined =>
    step.day === undefined || step.at === undefined ? undefined : wallMinute(step.day, step.at);
  const next = () => steps().find((step) => step.at !== undefined && !isDone(step));
  const coatsOn = (): readonly CoatOn[] =>
    [...on()].map(([coat, { at }]) => {
      const until = wallMinute(dayOf(at, book.zone), clock(at, book.zone));
      const step = steps().find((one) => coats().get(one) === coat);
      return { coat, from: wallText(until - (step?.minutes ?? 0)), until: wallText(until) };
    });
  /** The wait after the last coat that is on: until when at the least and at the most. */
  const drying = () => {
    const last = coatsOn().find(({ coat }) => coat === lastOn());
    const step = steps().find((one) => coats().get(one) === lastOn());
    if (last === undefined || step === undefined || next() === undefined) return undefined;
    const until = wallMinute(last.until.slice(0, 10), last.until.slice(11));
    const most = step.mostWaitMinutes;
    return {
      coat: last.coat,
      ready: until + (step.leastWaitMinutes ?? 0),
      most: most === undefined ? undefined : until + most,
    };
  };
  const body = (): ScheduleBody | null => {
    const kept = schedule();
    if (kept === null || kept.workedOutFrom === undefined) return null;
    const { entry: _, ...rest } = kept;
    return rest as unknown as ScheduleBody; // what it was worked out from stands in it
  };
  const windows = (): readonly ShopWindow[] => body()?.workedOutFrom.windows ?? [];
  const replanned = (among: readonly ShopWindow[]) => {
    const kept = body();
    return kept === null ? undefined : carriedOn(kept, coatsOn(), among, wall().text);
  };
  /** Writes the plan anew in place of the one that is; returns the entry, to be struck by an undo. */
  const keep = (anew: ScheduleBody): string =>
    book.write({
      kind: "piece-scheduled",
      about: [piece().id, ...(anew.fromTrial === undefined ? [] : [anew.fromTrial])],
      strikes: [schedule()?.entry ?? ""].filter((id) => id !== ""),
      body: anew,
    });
  return {
    steps,
    coats,
    wall,
    isDone,
    next,
    drying,
    windows,
    replanned,
    keep,
    canReplan: () => body() !== null && next() !== undefined,
    ends: () => endOf(steps()),
    /** The next step, when its hour passed a while ago. */
    behind: () => {
      const step = next();
      const at = step === undefined ? undefined : planned(step);
      return at !== undefined && wall().minutes > at + lateMinutes ? step : undefined;
    },
  };
}
