import type { NotebookEntry } from "../notebook/entry.ts";
import type { Body } from "../notebook/kinds/all.ts";
import type { NotebookReader } from "../notebook/reader.ts";
import { methodDefaults, type PieceMethod } from "../pieces/method-defaults.ts";
import { unitNamed } from "../quantity/unit-table.ts";
import { type PieceView, pieceIds, pieceView } from "./piece.ts";

/** What a coat was planned to take and what it took; null where it was not written down. */
export interface CoatUsed {
  readonly coat: number;
  readonly method: string;
  readonly entry: string | null;
  readonly plannedMl: number | null;
  readonly usedMl: number | null;
  readonly plannedMinutes: number | null;
  readonly minutes: number | null;
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

function compared(pairs: readonly (readonly [number | null, number | null])[]): Compared {
  const both = pairs.filter(
    (pair): pair is readonly [number, number] => pair[0] !== null && pair[1] !== null && pair[0] > 0,
  );
  return {
    coats: both.length,
    planned: both.reduce((sum, [planned]) => sum + planned, 0),
    used: both.reduce((sum, [, used]) => sum + used, 0),
  };
}

/**
 * What a piece took beside what was planned for it, coat by coat.
 *
 * @param piece       with a schedule, or nothing is compared
 * @param gramsPerMl  density of the piece's liquid, for what was weighed; null where it is not known
 */
export function plannedUsed(piece: PieceView, gramsPerMl: number | null): PlannedUsed {
  const steps = (piece.schedule?.steps ?? []).filter((step) => step.what === "coat");
  const coats = steps.map((step, i): CoatUsed => {
    const entry = piece.layers.find((one) => layer(one).planned?.coat === i + 1);
    return {
      coat: i + 1,
      method: step.method ?? piece.schedule?.recipe.method ?? "",
      entry: entry?.id ?? null,
      plannedMl: step.millilitres ?? null,
      usedMl: entry === undefined ? null : millilitresOf(layer(entry), gramsPerMl),
      plannedMinutes: step.minutes ?? null,
      minutes: entry === undefined ? null : (layer(entry).minutes ?? null),
      plannedDay: step.day ?? null,
      onAt: entry?.happened ?? null,
    };
  });
  return {
    coats,
    liquid: compared(coats.map((c) => [c.plannedMl, c.usedMl])),
    hands: compared(coats.map((c) => [c.plannedMinutes, c.minutes])),
  };
}

/** The person's own use, from every piece that was coated by a method; null for what was measured on too few coats to start from. */
export interface OwnUse {
  /** Of a coat on a sealed surface, as a plan takes it: the first coat on bare wood counts for its usual more. */
  readonly millilitresPerM2: { readonly value: number; readonly coats: number } | null;
  readonly minutesPerM2: { readonly value: number; readonly coats: number } | null;
}

/** Coats from which a plan starts from the person's own figure in place of the usual one; our convention. */
export const coatsToTrust = 3;

/** Each piece's liquid's density, by its id, where it is known. */
export type DensityOf = (piece: PieceView) => number | null;

interface Measured {
  readonly used: number;
  /** Square metres that it went on, the first coat counted for its usual more. */
  readonly over: number;
}

const rate = (measured: readonly Measured[]): { value: number; coats: number } | null =>
  measured.length < coatsToTrust
    ? null
    : {
        value: measured.reduce((sum, m) => sum + m.used, 0) / measured.reduce((sum, m) => sum + m.over, 0),
        coats: measured.length,
      };

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
      .map((coat) => ({ coat, area: piece.areaM2 })),
  );
  return {
    millilitresPerM2: rate(
      each.flatMap(({ coat, area }) =>
        coat.usedMl === null ? [] : [{ used: coat.usedMl, over: area * (coat.coat === 1 ? first : 1) }],
      ),
    ),
    minutesPerM2: rate(
      each.flatMap(({ coat, area }) => (coat.minutes === null ? [] : [{ used: coat.minutes, over: area }])),
    ),
  };
}
