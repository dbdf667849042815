import { DomainError, inRange } from "../domain-error.ts";
import type { Metre, VolumeFraction } from "../units.ts";
import { type CalendarDay, dayNumber, daysLater } from "./calendar-day.ts";
import { type MethodDefaults, methodDefaults, type PieceMethod, workDefaults } from "./method-defaults.ts";

/** An evening at the bench: minutes after local midnight. */
export interface Evening {
  readonly day: CalendarDay;
  readonly fromMinute: number;
  readonly untilMinute: number;
}

export interface PieceToPlan {
  /** Surface to be finished [m²], above 0 to 200. */
  readonly areaM2: number;
  readonly method: PieceMethod;
  /** 1 to 40. */
  readonly coats: number;
  /** Share of the liquid that is resin, by volume. */
  readonly volumeSolids: VolumeFraction;
  /** In order of time, none overlapping. */
  readonly evenings: readonly Evening[];
  /** Share mixed on top of what is reckoned to be used. */
  readonly spareShare?: number;
  readonly cureDays?: number;
  /** The person's own numbers in place of the starting ones. */
  readonly own?: Partial<MethodDefaults>;
}

export const pieceWorks = ["sand", "coat", "de-nib", "level", "cure", "rub out"] as const;
export type PieceWork = (typeof pieceWorks)[number];

export interface PlannedStep {
  readonly what: PieceWork;
  /** 1, 2, 3 … for coats. */
  readonly coat?: number;
  /** Null when the evenings given do not reach. */
  readonly day: CalendarDay | null;
  readonly fromMinute: number | null;
  readonly minutes: number;
  readonly millilitres: number;
  /** Least wait before the next step [min]. */
  readonly waitMinutes: number;
}

export interface PiecePlan {
  readonly steps: readonly PlannedStep[];
  /** Liquid reckoned to be used, and with the spare. */
  readonly millilitresUsed: number;
  readonly millilitresToMix: number;
  readonly dryFilm: Metre;
  readonly eveningsUsed: number;
  /** Steps that the evenings given have no room for. */
  readonly unplaced: number;
}

interface Step {
  readonly what: PieceWork;
  readonly coat?: number;
  readonly minutes: number;
  readonly millilitres: number;
  readonly waitMinutes: number;
  readonly nightAfter: boolean;
}

/** The steps in order, without dates. */
function stepsOf(piece: PieceToPlan, method: MethodDefaults): Step[] {
  const hands = (perM2: number): number => Math.max(5, Math.round(perM2 * piece.areaM2));
  const work = (what: PieceWork, perM2: number, nightAfter = false): Step => ({
    what,
    minutes: hands(perM2),
    millilitres: 0,
    waitMinutes: 0,
    nightAfter,
  });
  const steps: Step[] = [work("sand", workDefaults.sandMinutesPerM2)];
  for (let coat = 1; coat <= piece.coats; coat++) {
    const last = coat === piece.coats;
    const night = coat % method.coatsANight === 0 && !last;
    steps.push({
      what: "coat",
      coat,
      minutes: hands(method.minutesPerM2),
      millilitres: method.litresPerM2 * 1000 * piece.areaM2 * (coat === 1 ? method.firstCoatTimes : 1),
      waitMinutes: last ? 0 : (method.waits[Math.min(coat, 3) - 1] as number),
      nightAfter: night,
    });
    if (coat === 1 && !last) steps.push(work("de-nib", workDefaults.deNibMinutesPerM2));
    else if (coat % workDefaults.levelEvery === 0 && !last)
      steps.push(work("level", workDefaults.levelMinutesPerM2));
  }
  return steps;
}

/** Work that can be left and taken up again; a coat has a wet edge and is not. */
const canBeLeft: readonly PieceWork[] = ["sand", "de-nib", "level"];
/** Less than this is not worth beginning. */
const leastPart = 15;

/**
 * Puts each step into the first evening that has room for it, after the wait before it. Work that can be left is
 * spread over evenings; a night is waited where one is asked.
 */
function placed(steps: readonly Step[], evenings: readonly Evening[]): PlannedStep[] {
  const out: PlannedStep[] = [];
  let evening = 0;
  let readyAt = Number.NEGATIVE_INFINITY; // minutes since 1970, local
  for (const { nightAfter, ...step } of steps) {
    let minutes = step.minutes;
    for (; minutes > 0 && evening < evenings.length; evening++) {
      const { day, fromMinute, untilMinute } = evenings[evening] as Evening;
      const midnight = dayNumber(day) * 1440;
      const from = Math.max(midnight + fromMinute, readyAt);
      const room = midnight + untilMinute - from;
      const part = canBeLeft.includes(step.what) && room >= leastPart ? Math.min(room, minutes) : minutes;
      if (part > room) continue;
      out.push({ ...step, minutes: part, day, fromMinute: from - midnight });
      readyAt = from + part + step.waitMinutes;
      minutes -= part;
      if (minutes <= 0) break;
    }
    if (minutes > 0) out.push({ ...step, minutes, day: null, fromMinute: null });
    else if (nightAfter) evening++;
  }
  return out;
}

function checkEvenings(evenings: readonly Evening[]): void {
  evenings.forEach(({ day, fromMinute, untilMinute }, i) => {
    const field = `evenings[${i}]`;
    if (!(untilMinute > fromMinute))
      throw new DomainError({
        code: "contradiction",
        field,
        value: day,
        because: "It ends before it starts.",
      });
    const before = evenings[i - 1];
    if (
      before !== undefined &&
      dayNumber(before.day) * 1440 + before.untilMinute > dayNumber(day) * 1440 + fromMinute
    )
      throw new DomainError({
        code: "contradiction",
        field,
        value: day,
        because: "Evenings go in order of time and do not overlap.",
      });
    const longest = 24 * 60;
    inRange(`${field}.fromMinute`, fromMinute, { min: 0, max: longest });
    inRange(`${field}.untilMinute`, untilMinute, { min: 0, max: longest });
  });
}

/**
 * A recipe laid onto a real piece: the steps in order with their dates, the liquid for each, and the film at the end.
 *
 *     V = Σ a·A,   h = Σ a·φ·τ     (a: liquid per area and coat, A: area, φ: volume solids, τ: share that stays)
 *
 * Each step goes into the first evening with room for it after the least wait; waits within an evening are those of
 * the method, and a night is waited after every few coats. Times are local wall-clock minutes: a night in which the
 * clocks change is an hour longer or shorter than reckoned.
 *
 * @param piece  area above 0 to 200 m², 1 to 40 coats, volume solids 0–1, evenings in order
 * @returns      steps (days are null where the evenings do not reach), millilitres, dry film [m]
 * @throws DomainError for an area, a number of coats or an evening that is out of range or out of order
 *
 * Valid:  flat and lightly shaped work; turned and carved work takes 30–50 % spare (common practice)
 * Source: 1604 ft² a US gallon at one mil (an identity of units); amounts, losses and waits are common practice,
 *         listed in `methodDefaults`
 */
export function planPiece(piece: PieceToPlan): PiecePlan {
  const area = inRange("areaM2", piece.areaM2, { min: 1e-4, max: 200 });
  inRange("coats", piece.coats, { min: 1, max: 40 });
  if (!Number.isInteger(piece.coats))
    throw new DomainError({
      code: "wrong-type",
      field: "coats",
      value: piece.coats,
      because: "Coats are counted in whole numbers.",
    });
  checkEvenings(piece.evenings);
  const spare = inRange("spareShare", piece.spareShare ?? workDefaults.spareShare, { min: 0, max: 2 });
  const cureDays = inRange("cureDays", piece.cureDays ?? workDefaults.cureDays, { min: 0, max: 365 });
  const method = { ...methodDefaults[piece.method], ...piece.own };
  const steps = placed(stepsOf(piece, method), piece.evenings);
  const millilitresUsed = steps.reduce((sum, step) => sum + step.millilitres, 0);
  const lastDay = steps.at(-1)?.day ?? null;
  const curedDay = lastDay === null ? null : daysLater(lastDay, Math.round(cureDays));
  const still = { fromMinute: null, millilitres: 0, waitMinutes: 0 };
  return {
    steps: [
      ...steps,
      { what: "cure", day: lastDay, minutes: 0, ...still },
      {
        what: "rub out",
        day: curedDay,
        minutes: Math.max(5, Math.round(workDefaults.rubOutMinutesPerM2 * area)),
        ...still,
      },
    ],
    millilitresUsed,
    millilitresToMix: millilitresUsed * (1 + spare),
    dryFilm: ((millilitresUsed / 1e6 / area) * piece.volumeSolids * method.transfer) as Metre, // a volume over an area
    eveningsUsed: new Set(steps.map((step) => step.day).filter((day) => day !== null)).size,
    unplaced: steps.filter((step) => step.day === null).length,
  };
}
