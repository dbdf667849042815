import { inRange } from "../domain-error.ts";
import type { AgendaSearch, ProvenGoals } from "../schedule/plan-agenda.ts";
import type { ShopClock } from "../schedule/shop-clock.ts";
import type { Metre } from "../units.ts";
import { type BestPlaces, bestPlaces } from "./best-places.ts";
import { type CalendarDay, daysLater } from "./calendar-day.ts";
import { wallAt } from "./evening.ts";
import type { PieceWork } from "./finishing-step.ts";
import { type Laid, laidOut, minutesOf } from "./laid-schedule.ts";
import { workDefaults } from "./method-defaults.ts";
import { checkMostWaits } from "./most-waits.ts";
import { checkPiece, clockOf, type PieceToPlan } from "./piece-to-plan.ts";
import { placeTasks, shopOf } from "./place-tasks.ts";
import { type Rest, restOf } from "./rest-of-piece.ts";
import type { Place } from "./task.ts";

export interface PlannedStep {
  readonly what: PieceWork;
  /** Which of the steps it came from, counted from 0. */
  readonly source: number;
  /** 1, 2, 3 … for coats. */
  readonly coat?: number;
  /** On which, where the piece has several. */
  readonly surface?: string;
  /** Behind us: it has no date here, it happened. */
  readonly done?: boolean;
  /** Null when the evenings given do not reach. */
  readonly day: CalendarDay | null;
  readonly fromMinute: number | null;
  readonly minutes: number;
  readonly millilitres: number;
  /** Least and most wait before the next step [min]. */
  readonly waitMinutes: number;
  readonly mostWaitMinutes?: number;
}

export interface PiecePlan {
  readonly steps: readonly PlannedStep[];
  /** Liquid reckoned to be used, and with the spare. */
  readonly millilitresUsed: number;
  readonly millilitresToMix: number;
  readonly dryFilm: Metre;
  readonly eveningsUsed: number;
  /** Steps that the evenings given have no room for, each surface counted. */
  readonly unplaced: number;
  /** The goals for which a search has found that no plan is better; null where it was not asked, or found nothing out. */
  readonly provenBest: ProvenGoals | null;
}

/** The liquid of each step [mL]. Of the first, end grain drinks more than its share, and none of that stands as film. */
function millilitresOf({ steps }: Laid, { areaM2, endGrain }: PieceToPlan): readonly number[] {
  const first = steps.findIndex(({ step }) => step.liquid !== undefined);
  const drinks = endGrain === undefined ? 0 : (endGrain.times - 1) * endGrain.areaM2;
  return steps.map(
    ({ step }, i) => (step.liquid?.litresPerM2 ?? 0) * 1000 * (areaM2 + (i === first ? drinks : 0)),
  );
}

/** What each step shows of itself, wherever it goes. */
function tellings({ steps }: Laid, millilitres: readonly number[]) {
  let coats = 0;
  return steps.map(({ step, written }, i) => {
    if (step.what === "coat") coats += 1;
    return {
      what: step.what,
      source: written,
      ...(step.what === "coat" ? { coat: coats } : {}),
      millilitres: millilitres[i] ?? 0,
      waitMinutes: step.leastWaitMinutes,
      ...(step.mostWaitMinutes === undefined ? {} : { mostWaitMinutes: step.mostWaitMinutes }),
    };
  });
}

type Told = ReturnType<typeof tellings>[number];

/** A task in its parts, each on its evening; nothing where it was done before. */
function inEvenings(of: Told, place: Place | undefined, clock: ShopClock): readonly PlannedStep[] {
  if (place === undefined) return [{ ...of, done: true, minutes: 0, day: null, fromMinute: null }];
  const parts = place.parts.map(({ from, minutes }): PlannedStep => {
    const { day, minute } = wallAt(clock, from);
    return { ...of, minutes, day, fromMinute: minute };
  });
  return place.left > 0 ? [...parts, { ...of, minutes: place.left, day: null, fromMinute: null }] : parts;
}

/** Where the work of a step on a surface went. */
function placeBy(rest: Rest, places: readonly (readonly Place[])[]) {
  const key = (step: number, surface: number) => `${step} ${surface}`;
  const by = new Map(
    rest.lanes.flatMap(({ tasks }, lane) =>
      tasks.map(({ step, surface }, i) => [key(step, surface), places[lane]?.[i]] as const),
    ),
  );
  return (step: number, surface: number) => by.get(key(step, surface));
}

/** The day on which the last of several is done that are left; null where one has none. */
function lastDay(several: readonly PlannedStep[]): CalendarDay | null {
  const days = several.flatMap(({ done, day }) => (done ? [] : [day]));
  return days.includes(null) ? null : (days.toSorted().at(-1) ?? null);
}

/** The evenings' steps with their dates, surface by surface, and from which day on the others may be done. */
function dated(
  laid: Laid,
  rest: Rest,
  places: readonly (readonly Place[])[],
  piece: PieceToPlan,
  clock: ShopClock,
): readonly PlannedStep[] {
  const told = tellings(laid, millilitresOf(laid, piece));
  const worked = new Set(laid.lanes[0]?.map(({ step }) => step)); // the same on every surface
  const placeOf = placeBy(rest, places);
  const lastDone =
    [...worked].findLast((i) => laid.surfaces.some((_, s) => placeOf(i, s) === undefined)) ?? -1;
  const out: PlannedStep[] = [];
  let day: CalendarDay | null = null;
  told.forEach((of, i) => {
    if (worked.has(i)) {
      const on = laid.surfaces.map(({ name, share }, surface) => {
        const its = { ...of, millilitres: of.millilitres * share, ...(name === "" ? {} : { surface: name }) };
        return inEvenings(its, placeOf(i, surface), clock);
      });
      out.push(...on.flat());
      day = lastDay(on.flatMap((parts) => parts.at(-1) ?? []));
      return;
    }
    const { step } = laid.steps[i] as Laid["steps"][number];
    const done = i < lastDone ? { done: true } : {};
    out.push({ ...of, ...done, minutes: minutesOf(step, piece.areaM2), day, fromMinute: null });
    if (i >= laid.cure && day !== null) day = daysLater(day, Math.round(of.waitMinutes / 1440));
  });
  return out;
}

/** Where each task goes: by lists, and bettered by a search where one is asked and there is room for everything. */
function placed({ lanes, evenings }: Rest, piece: PieceToPlan, search: AgendaSearch | undefined): BestPlaces {
  const shop = shopOf(piece);
  const places = placeTasks(lanes, evenings, shop);
  const isAll = places.flat().every(({ left }) => left <= 0) && places.flat().length > 0;
  return search === undefined || !isAll
    ? { places, provenBest: null }
    : bestPlaces(lanes, evenings, shop, places, search);
}

/**
 * A finishing schedule laid onto a real piece: the steps in order with their dates, the liquid for each, and the film
 * at the end.
 *
 *     V = Σ a·A + a1·(e − 1)·E,   h = Σ a·φ·τ
 *
 * with a the liquid per area of a coat and a1 that of the first, A the area, E the end grain of it, e how many times as
 * much that takes, φ the volume solids and τ the share that stays.
 *
 * Each step goes into the first evening with room for it after the least wait and within the most; a night is waited
 * where the schedule asks one. Evenings and steps are told by the clock on the wall and waits run in real time: over a
 * night in which the clocks of the zone change it is still waited as long. What comes after the cure has a first day, and no hour. With `begun`, what lies before the
 * last coat that is on counts as done too, and the rest goes into the evenings after it: each step as early as it can,
 * so that a coat that was late moves only what it must.
 *
 * A piece of several surfaces has every step on each of them, with its share of the minutes and the liquid, and waits of
 * its own. What is turned to is worked when the surface before it can be lain on. Each person works on one surface at a
 * time, and a coat keeps its thing in a drying place from its beginning until it is dry.
 *
 * With a search, the plan that this gives is bettered by the planner of agendas: the earliest finish, then the fewest
 * evenings, then the least idle time at the bench, with long work divided as it was.
 *
 * @param piece  area above 0 to 200 m², the end grain of it, steps with 1 to 40 coats, evenings in order, 1 to 12 surfaces
 * @param search how long to look for a better plan, and when to stop; none is looked for without it
 * @returns      steps (days are null where the evenings do not reach), millilitres, dry film [m]
 * @throws DomainError for an area, a step, a surface, a number of coats begun or an evening that is out of range or out of order,
 *                     and for a most wait that none of the evenings can keep
 *
 * Valid:  flat and lightly shaped work; turned and carved work takes 30–50 % spare (common practice)
 * Source: 1604 ft² a US gallon at one mil (an identity of units); amounts, losses and waits are common practice,
 *         listed in `methodDefaults`
 */
export function planPiece(piece: PieceToPlan, search?: AgendaSearch): PiecePlan {
  checkPiece(piece);
  const spare = inRange("spareShare", piece.spareShare ?? workDefaults.spareShare, { min: 0, max: 2 });
  const laid = laidOut(piece);
  const clock = clockOf(piece);
  const rest = restOf(laid, piece, clock);
  for (const { tasks } of rest.lanes)
    checkMostWaits(tasks, rest.evenings, ({ step }) => `steps[${laid.steps[step]?.written}]`);
  const { places, provenBest } = placed(rest, piece, search);
  const all = places.flat();
  const liquids = laid.steps.flatMap(({ step }) => step.liquid ?? []);
  const millilitresUsed = millilitresOf(laid, piece).reduce((sum, ml) => sum + ml, 0);
  const film = liquids.reduce((sum, l) => sum + (l.litresPerM2 / 1000) * l.volumeSolids * l.transfer, 0);
  return {
    steps: dated(laid, rest, places, piece, clock),
    millilitresUsed,
    millilitresToMix: millilitresUsed * (1 + spare),
    dryFilm: film as Metre, // a volume over an area
    eveningsUsed: new Set(all.flatMap(({ parts }) => parts.map(({ evening }) => evening))).size,
    unplaced: all.filter(({ left }) => left > 0).length,
    provenBest,
  };
}
