import { type Accessor, createMemo } from "solid-js";
import type { ScheduleStep } from "../../core/notebook/kinds/pieces.ts";
import { calendarDay, dayFromNumber, dayNumber } from "../../core/pieces/calendar-day.ts";
import { coatNumbers, inTime, stepsBehind } from "../../core/pieces/planned-evenings.ts";
import type { ShopWindow } from "../../core/pieces/shop-windows.ts";
import { thingsOf } from "../../core/pieces/surfaces.ts";
import { type CoatOn, carriedOn } from "../../core/registry/piece-carried-on.ts";
import type { PiecePlanInput, ScheduleBody } from "../../core/registry/piece-schedule.ts";
import type { CoatsOn } from "../../core/views/coats-on.ts";
import type { PieceView } from "../../core/views/piece.ts";
import type { OpenBook } from "../book-store/open-book.ts";
import { now } from "../shell/now.ts";
import { clock, dayOf } from "../words/time.ts";
import { coatSteps } from "./kept-plan.ts";
import { clockOf, coatName } from "./plan-words.ts";

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

/** A person who presses a button waits no longer than that before it seems stuck. */
const searchMs = 100;
/** So much later than planned, and the plan is no longer a plan. */
const lateMinutes = 60;

/** The day on which the hands-on work of a plan ends; null where its evenings do not reach. */
export function endOf(steps: readonly ScheduleStep[]): string | null {
  if (steps.some((step) => step.day === undefined)) return null;
  const days = steps.flatMap(({ day, at }) => (day === undefined || at === undefined ? [] : [day]));
  return days.sort().at(-1) ?? null;
}

/** The surfaces of the same thing as one, with itself: those that are turned to. */
function sameThing(given: PiecePlanInput | undefined, surface: string | undefined): readonly string[] {
  const all = given?.surfaces ?? [];
  const thing = thingsOf(all.map(({ turned = false, ...one }) => ({ ...one, turned }))).find((one) =>
    one.some((i) => all[i]?.name === surface),
  );
  return thing?.flatMap((i) => all[i]?.name ?? []) ?? [];
}

/** What has become of a kept plan: what is behind, what is next, and the rest planned anew. */
export function createCarryingOn(
  book: OpenBook,
  piece: Accessor<PieceView>,
  schedule: Accessor<Schedule | null>,
  on: Accessor<CoatsOn>,
) {
  const steps = () => schedule()?.steps ?? [];
  const coats = () => coatNumbers(steps());
  /** The last coat that is on a surface; on any where none is named. */
  const lastOn = (surface?: string) =>
    on()
      .logged.filter((one) => one.surface === undefined || surface === undefined || one.surface === surface)
      .reduce<CoatsOn["logged"][number] | undefined>(
        (a, b) => (a === undefined || b.coat >= a.coat ? b : a),
        undefined,
      );
  const wall = () => {
    const [day, at] = [dayOf(now(), book.zone), clock(now(), book.zone)];
    const minutes = wallMinute(day, at);
    return { day, minute: minutes - wallMinute(day, "00:00"), minutes, text: `${day}T${at}` };
  };
  /** Behind the last coat that is on a surface, all on it is done. */
  const behind = createMemo(() =>
    stepsBehind(steps(), (coat, surface) => coat <= (lastOn(surface)?.coat ?? 0)),
  );
  const isDone = (step: ScheduleStep): boolean => behind().has(step);
  const planned = (step: ScheduleStep): number | undefined =>
    step.day === undefined || step.at === undefined ? undefined : wallMinute(step.day, step.at);
  const next = () => inTime(steps()).find((step) => !isDone(step));
  const finished = ({ at }: { readonly at: string }): number =>
    wallMinute(dayOf(at, book.zone), clock(at, book.zone));
  const coatsOn = (): readonly CoatOn[] =>
    on().logged.map((one) => {
      const until = finished(one);
      const took = coatSteps(schedule(), one).reduce((sum, { minutes = 0 }) => sum + minutes, 0);
      return {
        coat: one.coat,
        ...(one.surface === undefined ? {} : { surface: one.surface }),
        from: wallText(until - took),
        until: wallText(until),
      };
    });
  /** The wait before the next step by a coat that is on its surface, or on the one that it would lie on. */
  const waitAfter = (surface: string | undefined, before: string | undefined) => {
    const last = lastOn(before);
    const step =
      last === undefined
        ? undefined
        : coatSteps(schedule(), { ...last, ...(before && { surface: before }) })[0];
    if (last === undefined || step === undefined) return [];
    const [own, most] = [before === surface, step.mostWaitMinutes];
    const least = (own ? undefined : body()?.workedOutFrom.turnMinutes) ?? step.leastWaitMinutes ?? 0;
    return [
      {
        says: coatName(last.coat, before),
        ready: finished(last) + least,
        most: own && most !== undefined ? finished(last) + most : undefined,
      },
    ];
  };
  /** Until when the next step waits at the least and at the most, and for which coat. */
  const drying = () => {
    const surface = next()?.surface;
    if (next() === undefined) return undefined;
    const others = sameThing(body()?.workedOutFrom, surface).filter((one) => one !== surface);
    const waits = [surface, ...others].flatMap((before) => waitAfter(surface, before));
    const ready = Math.max(...waits.map((wait) => wait.ready));
    const longest = waits.find((wait) => wait.ready === ready);
    return longest && { ...longest, most: waits.find(({ most }) => most !== undefined)?.most };
  };
  const body = (): ScheduleBody | null => {
    const kept = schedule();
    if (kept === null || kept.workedOutFrom === undefined) return null;
    const { entry: _, ...rest } = kept;
    return rest as unknown as ScheduleBody; // what it was worked out from stands in it
  };
  const windows = (): readonly ShopWindow[] => body()?.workedOutFrom.windows ?? [];
  const laidAnew = (among: readonly ShopWindow[], limitMs: number) => {
    const kept = body();
    return kept === null ? undefined : carriedOn(kept, coatsOn(), among, wall().text, limitMs);
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
    /** What is left on these evenings, in the usual order: quick enough to be tried many times. */
    inOrder: (among: readonly ShopWindow[]) => laidAnew(among, 0),
    /** The same to be kept: another order is looked for where this one would end later than was planned. */
    replanned: (among: readonly ShopWindow[]) => laidAnew(among, searchMs),
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
