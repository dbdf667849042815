import type { NotebookEntry } from "../notebook/entry.ts";
import { isToTheMinute } from "../notebook/entry-time.ts";
import type { Body } from "../notebook/kinds/all.ts";
import type { ScheduleStep } from "../notebook/kinds/pieces.ts";
import type { NotebookReader } from "../notebook/reader.ts";
import { methodDefaults, type PieceMethod } from "../pieces/method-defaults.ts";
import { coatNumbers } from "../pieces/planned-evenings.ts";
import { unitNamed } from "../quantity/unit-table.ts";
import { coatsOn } from "./coats-on.ts";
import { type PieceView, pieceIds, pieceView } from "./piece.ts";

/** What a coat was planned to take and what it took; null where it was not written down. */
export interface CoatUsed {
  readonly coat: number;
  /** Where it was planned and written down for one side or part. */
  readonly surface?: string;
  /** Of the piece's area that it covers. */
  readonly share: number;
  readonly method: string;
  readonly entry: string | null;
  readonly plannedMl: number | null;
  readonly usedMl: number | null;
  readonly plannedMinutes: number | null;
  readonly minutes: number | null;
  /** From its end to the beginning of the next coat there: planned at the least, and as it was [min]. */
  readonly plannedWaitMinutes: number | null;
  readonly waitedMinutes: number | null;
  /** A day of the shop's calendar. */
  readonly plannedDay: string | null;
  /** An instant, UTC. */
  readonly onAt: string | null;
}

/** Of the coats that were measured: the sum of what was planned for them, and of what they took. */
export interface Compared {
  readonly coats: number;
  readonly planned: number;
  readonly used: number;
}

export interface PlannedUsed {
  /** Of the piece [m²]. */
  readonly areaM2: number;
  readonly coats: readonly CoatUsed[];
  readonly liquid: Compared;
  readonly hands: Compared;
}

const layer = (entry: NotebookEntry): Body<"layer-applied"> => entry.body as Body<"layer-applied">; // a piece's layers

/** Millilitres of a liquid from what was typed; null for a weight where its density is not known. */
function millilitresOf(body: Body<"layer-applied">, gramsPerMl: number | null): number | null {
  const total = body.amount?.total;
  if (total === undefined) return null;
  if (unitNamed(total.unit)?.dimension !== "mass") return total.si * 1e6;
  return gramsPerMl === null ? null : (total.si * 1e3) / gramsPerMl;
}

function compared(
  coats: readonly CoatUsed[],
  figuresOf: (coat: CoatUsed) => readonly [number | null, number | null],
): Compared {
  const both = coats.flatMap((one) => {
    const [planned, used] = figuresOf(one);
    return planned === null || used === null || planned <= 0 ? [] : [{ coat: one.coat, planned, used }];
  });
  return {
    coats: new Set(both.map(({ coat }) => coat)).size,
    planned: sum(both.map(({ planned }) => planned)),
    used: sum(both.map(({ used }) => used)),
  };
}

const sum = (values: readonly (number | undefined)[]): number =>
  values.reduce<number>((all, value) => all + (value ?? 0), 0);

const sumKnown = (values: readonly (number | undefined)[]): number | null =>
  values.every((value) => value !== undefined) ? sum(values) : null;

/** A coat, surface by surface; as one where it was written down of the whole piece. */
function surfacesOf(steps: readonly ScheduleStep[], logged: string | undefined): ScheduleStep[][] {
  return logged === undefined ? steps.map((step) => [step]) : [[...steps]];
}

type Used = Omit<CoatUsed, "waitedMinutes">;

/** How long a coat was left before the next on the same surface; null where either is not known to the minute. */
function waited(one: Used, all: readonly Used[], entries: ReadonlyMap<string, NotebookEntry>): number | null {
  const next = all.find((other) => other.coat === one.coat + 1 && other.surface === one.surface);
  const [entry, after] = [entries.get(one.entry ?? ""), entries.get(next?.entry ?? "")];
  const hands = next?.minutes ?? next?.plannedMinutes ?? null;
  if (entry === undefined || after === undefined || hands === null) return null;
  if (!isToTheMinute(entry) || !isToTheMinute(after)) return null;
  const minutes = (Date.parse(after.happened) - Date.parse(entry.happened)) / 60_000 - hands;
  return minutes < 0 ? null : minutes;
}

/**
 * What a piece took beside what was planned for it, coat by coat.
 *
 * @param piece       with a schedule, or nothing is compared
 * @param gramsPerMl  density of the piece's liquid, for what was weighed; null where it is not known
 */
export function plannedUsed(piece: PieceView, gramsPerMl: number | null): PlannedUsed {
  const numbers = coatNumbers(piece.schedule?.steps ?? []);
  const last = Math.max(...numbers.values());
  const on = coatsOn(piece);
  const bodies = new Map(piece.layers.map((entry) => [entry.id, entry]));
  const used = [...new Set(numbers.values())].flatMap((coat) => {
    const steps = [...numbers.keys()].filter((step) => numbers.get(step) === coat);
    const ofWhole = on.logged.findLast((one) => one.coat === coat && one.surface === undefined)?.entry;
    const all = sum(steps.map(({ millilitres }) => millilitres));
    return surfacesOf(steps, ofWhole).map((together): Used => {
      const [step] = together as [ScheduleStep];
      const surface = together.length < steps.length ? step.surface : undefined;
      const id = ofWhole ?? on.of({ coat, ...(surface === undefined ? {} : { surface }) })?.entry;
      const entry = id === undefined ? undefined : bodies.get(id);
      const plannedMl = sumKnown(together.map(({ millilitres }) => millilitres));
      const part = all > 0 && plannedMl !== null ? plannedMl / all : together.length / steps.length;
      return {
        coat,
        ...(surface === undefined ? {} : { surface }),
        share: part,
        method: step.method ?? piece.schedule?.recipe.method ?? "",
        entry: entry?.id ?? null,
        plannedMl,
        usedMl: entry === undefined ? null : millilitresOf(layer(entry), gramsPerMl),
        plannedMinutes: sumKnown(together.map(({ minutes }) => minutes)),
        minutes: entry === undefined ? null : (layer(entry).minutes ?? null),
        plannedWaitMinutes: coat === last ? null : (step.leastWaitMinutes ?? null),
        plannedDay: step.day ?? null,
        onAt: entry?.happened ?? null,
      };
    });
  });
  const coats = used.map((one) => ({ ...one, waitedMinutes: waited(one, used, bodies) }));
  return {
    areaM2: piece.areaM2,
    coats,
    liquid: compared(coats, (c) => [c.plannedMl, c.usedMl]),
    hands: compared(coats, (c) => [c.plannedMinutes, c.minutes]),
  };
}

/** The person's own use, from every piece that was coated by a method; null for what was measured on too few coats to start from. */
export interface OwnUse {
  /** Of a coat on a sealed surface, as a plan takes it: the first coat on bare wood counts for its usual more. */
  readonly millilitresPerM2: { readonly value: number; readonly coats: number } | null;
  readonly minutesPerM2: { readonly value: number; readonly coats: number } | null;
  /** Between two coats of one evening, the middle one of all: a night was longer than it had to be. */
  readonly leastWaitMinutes: { readonly value: number; readonly coats: number } | null;
}

/** Coats from which a plan starts from the person's own figure in place of the usual one; our convention. */
export const coatsToTrust = 3;

/** A wait so long was a night [min]. */
const night = 360;

/** Each piece's liquid's density, by its id, where it is known. */
export type DensityOf = (piece: PieceView) => number | null;

interface Measured {
  readonly used: number;
  /** Square metres that it went on, the first coat counted for its usual more. */
  readonly over: number;
  /** Of the piece that the coat was on: sides add up to a coat. */
  readonly share: number;
}

function rate(measured: readonly Measured[]): { value: number; coats: number } | null {
  const coats = Math.floor(sum(measured.map(({ share }) => share)) + 1e-9);
  if (coats < coatsToTrust) return null;
  return { value: sum(measured.map(({ used }) => used)) / sum(measured.map(({ over }) => over)), coats };
}

/** The middle of the waits, or half-way between the two in the middle. */
function middle(waits: readonly number[]): { value: number; coats: number } | null {
  if (waits.length < coatsToTrust) return null;
  const inOrder = waits.toSorted((a, b) => a - b);
  const [below, above] = [(waits.length - 1) >> 1, waits.length >> 1].map((i) => inOrder[i] as number);
  return { value: ((below as number) + (above as number)) / 2, coats: waits.length };
}

/**
 * What this person uses a square metre and coat: all that was measured over all that it covered.
 *
 *     q = Σ used / Σ area·times,  times = the usual more of a first coat, 1 for every other
 */
export function ownUse(read: NotebookReader, method: PieceMethod, density: DensityOf): OwnUse {
  const first = methodDefaults[method].firstCoatTimes;
  const pieces = pieceIds(read)
    .map((id) => pieceView(read, id))
    .filter((piece): piece is PieceView => piece !== null);
  const each = pieces.flatMap((piece) =>
    plannedUsed(piece, density(piece))
      .coats.filter((coat) => coat.method === method)
      .map((coat) => ({ ...coat, area: piece.areaM2 * coat.share })),
  );
  return {
    millilitresPerM2: rate(
      each.flatMap(({ coat, usedMl: used, area, share }) =>
        used === null ? [] : [{ used, share, over: area * (coat === 1 ? first : 1) }],
      ),
    ),
    minutesPerM2: rate(
      each.flatMap(({ minutes, area, share }) =>
        minutes === null ? [] : [{ used: minutes, share, over: area }],
      ),
    ),
    leastWaitMinutes: middle(
      each.flatMap(({ waitedMinutes: wait }) => (wait === null || wait >= night ? [] : [wait])),
    ),
  };
}
