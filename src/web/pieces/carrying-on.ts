import { type Accessor, createMemo } from "solid-js";
import type { ScheduleStep } from "../../core/notebook/kinds/pieces.ts";
import { benchTime } from "../../core/pieces/bench-time.ts";
import { coatNumbers, inTime, stepsBehind } from "../../core/pieces/planned-evenings.ts";
import type { ShopWindow } from "../../core/pieces/shop-windows.ts";
import { type CoatOn, carriedOn } from "../../core/registry/piece-carried-on.ts";
import type { ScheduleBody } from "../../core/registry/piece-schedule.ts";
import { shopClock } from "../../core/schedule/shop-clock.ts";
import type { CoatsOn } from "../../core/views/coats-on.ts";
import type { PieceView } from "../../core/views/piece.ts";
import type { OpenBook } from "../book-store/open-book.ts";
import { now } from "../shell/now.ts";
import { clock, dayOf } from "../words/time.ts";
import { dryingUntil, lastOn, minuteOf } from "./drying-until.ts";
import { coatSteps } from "./kept-plan.ts";

type Schedule = NonNullable<PieceView["schedule"]>;
export type CarryingOn = ReturnType<typeof createCarryingOn>;

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

/** What has become of a kept plan: what is behind, what is next, and the rest planned anew. */
export function createCarryingOn(
  book: OpenBook,
  piece: Accessor<PieceView>,
  schedule: Accessor<Schedule | null>,
  on: Accessor<CoatsOn>,
) {
  const steps = () => schedule()?.steps ?? [];
  const coats = () => coatNumbers(steps());
  const shop = shopClock(book.zone);
  /** `2026-10-05T19:40` of minutes since 1970 UTC. */
  const wallText = (minute: number) => shop.clock(minute).slice(0, 16);
  /** The day and its minute by the clock on the wall, and the minutes since 1970 UTC. */
  const wall = () => {
    const text = `${dayOf(now(), book.zone)}T${clock(now(), book.zone)}`;
    return { ...benchTime(text, "now"), minutes: minuteOf(now()), text };
  };
  /** Behind the last coat that is on a surface, all on it is done. */
  const behind = createMemo(() =>
    stepsBehind(steps(), (coat, surface) => coat <= (lastOn(on(), surface)?.coat ?? 0)),
  );
  const isDone = (step: ScheduleStep): boolean => behind().has(step);
  const planned = (step: ScheduleStep): number | undefined =>
    step.day === undefined || step.at === undefined
      ? undefined
      : shop.minutesPastSkip(`${step.day}T${step.at}`, "steps");
  const next = () => inTime(steps()).find((step) => !isDone(step));
  const coatsOn = (): readonly CoatOn[] =>
    on().logged.map((one) => {
      const until = minuteOf(one.at);
      const took = coatSteps(schedule(), one).reduce((sum, { minutes = 0 }) => sum + minutes, 0);
      return {
        coat: one.coat,
        ...(one.surface === undefined ? {} : { surface: one.surface }),
        from: wallText(until - took),
        until: wallText(until),
      };
    });
  const drying = () => {
    const step = next();
    const kept = { schedule: schedule(), given: body()?.workedOutFrom, on: on() };
    return step && dryingUntil(kept, step.surface);
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
    /** `19:40` of minutes since 1970 UTC. */
    clockAt: (minute: number) => wallText(minute).slice(11),
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
