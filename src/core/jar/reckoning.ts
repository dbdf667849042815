import type { UncertaintySource } from "../solution/instruments.ts";
import type { Cut } from "../units.ts";
import { type Amounts, combined, cutOf } from "./amounts.ts";

/** Where an uncertainty comes from: an instrument, or an amount that was guessed. */
export type Source = UncertaintySource | "guess";

/** What the amounts would change by, were one reading higher by its standard uncertainty. */
export interface Influence {
  readonly source: Source;
  readonly change: Amounts;
}

/**
 * Amounts with what is not known about them, to first order. Every reading keeps its own influence through all that
 * follows, so that one poured from a parent twice is not counted as two independent ones.
 */
export interface Reckoned {
  readonly value: Amounts;
  /** By reading: the entry that wrote it and which figure of it. */
  readonly influences: ReadonlyMap<string, Influence>;
}

export const nothing: Reckoned = { value: {}, influences: new Map() };

/** One reading and its standard uncertainty, in the unit that the step works in. */
export interface Reading {
  readonly key: string;
  readonly source: Source;
  readonly value: number;
  readonly standardUncertainty: number;
}

type Step = (amounts: readonly Amounts[], readings: readonly number[]) => Amounts;

/**
 * A step's outcome with its uncertainty: the law of propagation, each derivative taken by moving one input by its
 * own standard uncertainty.
 *
 *     Δi = f(x + ui) − f(x)
 *
 * @param from      what goes in, with its influences
 * @param readings  figures that were read for this step
 * @param step      the step itself, on plain numbers
 * @returns         what comes out, with the influences of all of them
 *
 * Valid:    steps that are nearly straight over one standard uncertainty
 * Accuracy: first order
 * Source:   JCGM 100:2008, 5.1.2 and 5.1.3, note 2
 * @example
 * propagated([], [{ key: "a", source: "scale", value: 2, standardUncertainty: 0.1 }], (_, [x = 0]) => ({ resin: x })).value.resin // => 2
 */
export function propagated(from: readonly Reckoned[], readings: readonly Reading[], step: Step): Reckoned {
  const amounts = from.map((reckoned) => reckoned.value);
  const figures = readings.map((reading) => reading.value);
  const value = step(amounts, figures);
  const influences = new Map<string, Influence>();
  const keep = (key: string, source: Source, moved: Amounts): void => {
    influences.set(key, { source, change: combined([1, moved], [-1, value]) });
  };
  const keys = new Set(from.flatMap((reckoned) => [...reckoned.influences.keys()]));
  for (const key of keys) {
    const known = from.map((reckoned) => reckoned.influences.get(key));
    const source = known.find((influence) => influence !== undefined)?.source as Source;
    const moved = amounts.map((plain, i) => combined([1, plain], [1, known[i]?.change ?? {}]));
    keep(key, source, step(moved, figures));
  }
  for (const [i, reading] of readings.entries()) {
    if (reading.standardUncertainty === 0) continue;
    const moved = figures.map((x, j) => (i === j ? x + reading.standardUncertainty : x));
    keep(reading.key, reading.source, step(amounts, moved));
  }
  return { value, influences };
}

/** A figure made from reckoned amounts, with its standard uncertainty and what most of that is. */
export interface Figure {
  readonly value: number;
  readonly standardUncertainty: number;
  /** Shares of the variance by source, largest first. */
  readonly contributions: readonly { readonly source: Source; readonly share: number }[];
}

/** A figure read from the amounts, with how sure it is and what that comes from: first order, each influence by itself. */
export function figureOf(reckoned: Reckoned, read: (amounts: Amounts) => number): Figure {
  const value = read(reckoned.value);
  const bySource = new Map<Source, number>();
  for (const { source, change } of reckoned.influences.values()) {
    const moved = read(combined([1, reckoned.value], [1, change])) - value;
    bySource.set(source, (bySource.get(source) ?? 0) + moved ** 2);
  }
  const variance = [...bySource.values()].reduce((total, part) => total + part, 0);
  return {
    value,
    standardUncertainty: Math.sqrt(variance),
    contributions: [...bySource]
      .map(([source, part]) => ({ source, share: variance === 0 ? 0 : part / variance }))
      .sort((a, b) => b.share - a.share),
  };
}

export type CutFigure = Figure & { readonly value: Cut };

/** The cut with its uncertainty, or null where there is no solvent. */
export function cutFigure(reckoned: Reckoned): CutFigure | null {
  const value = cutOf(reckoned.value);
  return value === null ? null : { ...figureOf(reckoned, (amounts) => cutOf(amounts) ?? 0), value };
}
