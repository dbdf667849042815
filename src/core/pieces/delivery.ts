import { inRange } from "../domain-error.ts";
import { type Random, randomNormal } from "../random.ts";
import type { ShopClock } from "../schedule/shop-clock.ts";
import { finishedAt } from "./begun.ts";
import type { CalendarDay } from "./calendar-day.ts";
import { type Span, wallAt } from "./evening.ts";
import { laidOut, minutesOf } from "./laid-schedule.ts";
import { checkPiece, clockOf, type PieceToPlan } from "./piece-to-plan.ts";
import { placeTasks, shopOf } from "./place-tasks.ts";
import { restOf } from "./rest-of-piece.ts";
import type { Lane, Task } from "./task.ts";

/** Two waits of three lie between the figure divided by this and times it: from memory, to be edited. */
export const usualSpread = 1.4;

export interface DeliveryAsked extends Omit<PieceToPlan, "spareShare"> {
  /** Geometric standard deviation of every wait, 1 to 5. */
  readonly spreadTimes: number;
  readonly random: Random;
  /** 100 to 20 000. */
  readonly runs: number;
}

export interface DeliveryChance {
  readonly runs: number;
  /** Days on which any run was done, in order, with the share of runs that were done by then. */
  readonly doneBy: readonly { readonly day: CalendarDay; readonly share: number }[];
  /** Share of the runs that the evenings given were too few for. */
  readonly neverShare: number;
}

/** Work after the cure that is begun with less left of the evening is for the next. */
const worthBeginning = 15;

/** The day of a moment by the clock on the wall; days begin on whole quarters of an hour everywhere, and thousands of runs ask. */
function dayOfMoments(clock: ShopClock): (moment: number) => CalendarDay {
  const known = new Map<number, CalendarDay>();
  return (moment) => {
    const quarter = Math.floor(moment / 15);
    const day = known.get(quarter) ?? wallAt(clock, quarter * 15).day;
    known.set(quarter, day);
    return day;
  };
}

/** When work may be done from a moment on: in the first evening with room to begin it, at that moment where none is left. */
function momentOfWork(from: number, minutes: number, evenings: readonly Span[]): number {
  const least = Math.min(minutes, worthBeginning);
  const evening =
    minutes === 0 ? undefined : evenings.find(({ closes, opens }) => closes - Math.max(opens, from) >= least);
  return Math.max(from, evening?.opens ?? from);
}

/** A task whose waits turned out so many times as long; a most wait gives way. */
function waited(task: Task, times: number): Task {
  const leastWait = task.leastWait * times;
  return {
    ...task,
    leastWait,
    mostWait: Math.max(leastWait, task.mostWait),
    turn: task.turn * times,
    dries: task.dries * times,
  };
}

/**
 * How likely a piece is done by a day, when every wait may turn out longer or shorter than the practised figure.
 *
 *     W = w·exp(σ·z),  σ = ln s,  z standard normal     (w: the least wait between two works, or the cure)
 *
 * Each run draws every wait by itself and lays the schedule onto the evenings with it. Waits of one week are alike in
 * truth, cold or damp lasting for days, so the ends of the range are rarer here than at the bench. A night that is asked
 * stays a night, hands take what they take, what a surface waits to be lain on or cleared away is longer by as much, and a most wait gives way to a least one that was drawn longer. What comes
 * after the cure is done on the first of the evenings from then on, or on that day where they reach no further.
 *
 * @param asked  as a plan, the spread s 1–5, a seeded generator, 100–20 000 runs
 * @returns      the share of runs that were done by each day: the last work before the cure, and the cure with it
 * @throws DomainError for what a plan refuses, and for a spread or a number of runs that is out of range
 *
 * Valid:    as a plan is; waits that scatter evenly about their figure on a scale of times, not of minutes
 * Accuracy: of a share p, √(p(1 − p)/runs): 0.7 % at nine in ten and 2 000 runs
 * Source:   the lognormal distribution; the usual spread is from memory
 */
export function deliveryChance(asked: DeliveryAsked): DeliveryChance {
  checkPiece(asked);
  const sigma = Math.log(inRange("spreadTimes", asked.spreadTimes, { min: 1, max: 5 }));
  const runs = Math.round(inRange("runs", asked.runs, { min: 100, max: 20_000 }));
  const laid = laidOut(asked);
  const { steps, cure } = laid;
  const clock = clockOf(asked);
  const rest = restOf(laid, asked, clock);
  const shop = shopOf(asked);
  const times = (wait: number): number => (wait === 0 ? 1 : Math.exp(sigma * randomNormal(asked.random)));
  // alone, no surface waits for what lies under it or in its place
  const waitOf = (task: Task) =>
    laid.surfaces.length > 1 ? Math.max(task.leastWait, task.dries) : task.leastWait;
  const drawn = (lane: Lane): Lane => ({
    ...lane,
    tasks: lane.tasks.map((task) => waited(task, times(waitOf(task)))),
  });
  const afterwards = steps.slice(cure).map(({ step }) => step.leastWaitMinutes);
  const hands = steps.slice(cure).reduce((sum, { step }) => sum + minutesOf(step, asked.areaM2), 0);
  const { evenings } = rest;
  const begun = [...(asked.begun === undefined ? [] : [asked.begun]), ...(asked.begunOn ?? [])];
  const begins = Math.max(0, ...begun.map((one) => finishedAt(one, clock)));
  const dayOf = dayOfMoments(clock);
  const done = new Map<CalendarDay, number>();
  for (let run = 0; run < runs; run++) {
    const places = placeTasks(rest.lanes.map(drawn), evenings, shop);
    const cured = afterwards.reduce((sum, wait) => sum + wait * times(wait), 0);
    const last = places.flatMap((lane) => lane.at(-1) ?? []);
    if (last.some(({ left }) => left > 0)) continue;
    const ends = Math.max(begins, ...last.map(({ end }) => end));
    const day = dayOf(momentOfWork(ends + cured, hands, evenings));
    done.set(day, (done.get(day) ?? 0) + 1);
  }
  let sum = 0;
  const doneBy = [...done]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([day, count]) => {
      sum += count;
      return { day, share: sum / runs };
    });
  return { runs, doneBy, neverShare: 1 - sum / runs };
}

/**
 * The first day by which so large a share of the runs was done; null where the evenings were too few for that.
 *
 * @param share  0 to 1, as 0.9 for nine cases of ten
 */
export const dayOfShare = (chance: DeliveryChance, share: number): CalendarDay | null =>
  chance.doneBy.find((by) => by.share >= share)?.day ?? null;
