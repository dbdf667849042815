import type { Component } from "../registry/solvent.ts";
import { type Celsius, celsius, type VolumeFraction, volumeFraction } from "../units.ts";
import { type PublishedHazards, publishedHazards, type TwoLists } from "./published-hazards.ts";

/** A limit on what may be breathed, in parts per million of the air, with who set it and when. */
export interface ExposureLimit {
  readonly ppm: number;
  readonly body: string;
  readonly year: number;
  /** The average of a working day, or a ceiling never to be passed. */
  readonly over: "day" | "ceiling";
  /** The figure was taken from a document, or written down from memory. */
  readonly seen: "document" | "from memory";
}

export interface Hazards {
  readonly component: Component;
  /** The lower of the two published closed-cup values. */
  readonly flashPoint: Celsius;
  /** The lower of the two published limits, and the higher: the wider range is the more careful one. */
  readonly lowerFlammableLimit: VolumeFraction;
  readonly upperFlammableLimit: VolumeFraction;
  /** The limits of each body that has one; the lowest is the one to work by. */
  readonly limits: readonly ExposureLimit[];
  readonly goesThroughSkin: boolean;
}

const least = ({ iec, nfpa }: TwoLists): number => (nfpa === null ? iec : Math.min(iec, nfpa));
const most = ({ iec, nfpa }: TwoLists): number => (nfpa === null ? iec : Math.max(iec, nfpa));

const niosh = { body: "NIOSH", year: 2007 } as const;

function limitsOf({ oshaPpm, nioshPpm, seen }: PublishedHazards): ExposureLimit[] {
  const { day, ceiling } = nioshPpm;
  return [
    { ppm: oshaPpm, body: "OSHA", year: 1993, over: "day", seen },
    ...(day === null ? [] : [{ ppm: day, ...niosh, over: "day", seen } as const]),
    ...(ceiling === null ? [] : [{ ppm: ceiling, ...niosh, over: "ceiling", seen } as const]),
  ];
}

const table: ReadonlyMap<Component, Hazards> = new Map(
  publishedHazards.map((row) => [
    row.component,
    {
      component: row.component,
      flashPoint: celsius(least(row.flashPointC)),
      lowerFlammableLimit: volumeFraction(least(row.lowerPercent) / 100),
      upperFlammableLimit: volumeFraction(most(row.upperPercent) / 100),
      limits: limitsOf(row),
      goesThroughSkin: row.goesThroughSkin,
    },
  ]),
);

/**
 * What is published of a component's dangers; nothing for water, and nothing known for what a data sheet leaves
 * unnamed.
 *
 * @param component  name as in the calculations
 * @returns          flash point [°C], flammable limits [volume fraction of air], exposure limits [ppm], or undefined
 *
 * Valid:    the components of the calculations but water and `unknown`
 * Accuracy: flash point within 2 K and lower limit within 0.3 percentage points between published lists
 * Source:   IEC 60079-20-1:2010; NFPA 497 (2008); OSHA 29 CFR 1910.1000 table Z-1; NIOSH Pocket Guide (2007)
 * @example
 * hazardsOf("acetone")?.flashPoint // => -20
 */
export const hazardsOf = (component: Component): Hazards | undefined => table.get(component);

/**
 * The lowest of a component's published limits.
 *
 * @param hazards  a row of the table
 * @returns        the limit [ppm] with its body and year
 *
 * Valid:    any row
 * Accuracy: as published; a limit is law or advice where its body has a say, and never a line below which nothing happens
 * Source:   as `hazardsOf`
 * @example
 * lowestLimit(hazardsOf("acetone")).ppm // => 250
 */
export function lowestLimit(hazards: Hazards): ExposureLimit {
  return hazards.limits.reduce((low, limit) => (limit.ppm < low.ppm ? limit : low));
}
