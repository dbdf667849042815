import type { Component } from "../solution/component.ts";

/** What the lists print of one liquid, both lists side by side; null where a list is silent. */
export interface PublishedHazards {
  readonly component: Component;
  readonly flashPointC: TwoLists;
  readonly lowerPercent: TwoLists;
  readonly upperPercent: TwoLists;
  readonly autoignitionC: TwoLists;
  readonly oshaPpm: number;
  readonly nioshPpm: NioshLimits;
  readonly goesThroughSkin: boolean;
  /** Immediately dangerous to life or health; null where none is known here. */
  readonly dangerousPpm: number | null;
  /** The exposure limits were taken from a document, or written down from memory. */
  readonly seen: "document" | "from memory";
}
export interface TwoLists {
  readonly iec: number;
  readonly nfpa: number | null;
}
export interface NioshLimits {
  readonly day: number | null;
  readonly short: number | null;
  readonly ceiling: number | null;
}

type Pair = readonly [iec: number, nfpa: number | null];
type Row = readonly [
  component: Component,
  flashC: Pair,
  lowerPercent: Pair,
  upperPercent: Pair,
  autoignitionC: Pair,
  oshaPpm: number,
  niosh: readonly [day: number | null, short: number | null, ceiling: number | null],
  goesThroughSkin: boolean,
  dangerousPpm: number | null,
  seen: PublishedHazards["seen"],
];

/**
 * Flash points, flammable limits, ignition: IEC 60079-20-1:2010 and NFPA 497 (2008). Exposure limits: OSHA, 29 CFR
 * 1910.1000 table Z-1 (1993), and the NIOSH Pocket Guide (2007). Isobutanol's row is from memory throughout.
 */
const rows = [
  ["ethanol", [12, 13], [3.1, 3.3], [19, 19], [400, 363], 1000, [1000, null, null], false, 3300, "document"],
  ["methanol", [9, 12], [6, 6], [36, 36], [440, 385], 200, [200, 250, null], true, 6000, "document"],
  ["isopropanol", [12, 12], [2, 2], [12.7, 12.7], [399, 399], 400, [400, 500, null], false, 2000, "document"],
  [
    "n-propanol",
    [15, 15],
    [2.1, 2.2],
    [17.5, 13.7],
    [385, 413],
    200,
    [200, 250, null],
    true,
    800,
    "from memory",
  ],
  [
    "n-butanol",
    [35, 36],
    [1.4, 1.4],
    [12, 11.2],
    [343, 343],
    100,
    [null, null, 50],
    true,
    1400,
    "from memory",
  ],
  [
    "isobutanol",
    [28, null],
    [1.4, null],
    [11, null],
    [415, null],
    100,
    [50, null, null],
    false,
    1600,
    "from memory",
  ],
  [
    "acetone",
    [-20, -20],
    [2.5, 2.5],
    [14.3, 12.8],
    [539, 465],
    1000,
    [250, null, null],
    false,
    2500,
    "document",
  ],
  ["mek", [-10, -6], [1.5, 1.4], [13.4, 11.4], [404, 404], 200, [200, 300, null], false, 3000, "document"],
  ["mibk", [16, null], [1.2, null], [8, null], [475, null], 100, [50, 75, null], false, 500, "document"],
  [
    "ethyl-acetate",
    [-4, -4],
    [2, 2],
    [12.8, 11.5],
    [470, 427],
    400,
    [400, null, null],
    false,
    2000,
    "document",
  ],
  [
    "n-butyl-acetate",
    [22, 22],
    [1.2, 1.7],
    [8.5, 7.6],
    [390, 421],
    150,
    [150, 200, null],
    false,
    1700,
    "document",
  ],
  ["n-heptane", [-7, -4], [0.85, 1], [6.7, 6.7], [204, 204], 500, [85, null, 440], false, 750, "from memory"],
] as const satisfies readonly Row[];

const lists = ([iec, nfpa]: Pair): TwoLists => ({ iec, nfpa });

/** Every liquid that can burn, in the order of the calculations. */
export const publishedHazards: readonly PublishedHazards[] = (rows as readonly Row[]).map(
  ([component, flash, lower, upper, ignition, oshaPpm, [day, short, ceiling], skin, dangerousPpm, seen]) => ({
    component,
    flashPointC: lists(flash),
    lowerPercent: lists(lower),
    upperPercent: lists(upper),
    autoignitionC: lists(ignition),
    oshaPpm,
    nioshPpm: { day, short, ceiling },
    goesThroughSkin: skin,
    dangerousPpm,
    seen,
  }),
);
