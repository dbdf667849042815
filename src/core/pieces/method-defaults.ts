/** How a coat goes on. Padding, brushing and spraying differ in what they lay down, what they lose and how soon they may be followed. */
export const pieceMethods = ["pad", "brush", "spray"] as const;
export type PieceMethod = (typeof pieceMethods)[number];

export interface MethodDefaults {
  /** Wet liquid used per coat on a sealed surface [m³/m² = m]. */
  readonly litresPerM2: number;
  /** Bare wood drinks more: the first coat takes this many times as much. */
  readonly firstCoatTimes: number;
  /** Share of what is used that stays as film. */
  readonly transfer: number;
  readonly minutesPerM2: number;
  /** Least wait [min] after coat 1, after coat 2 and after every later one. */
  readonly waits: readonly [number, number, number];
  /** After so many coats the rest of the night is waited. */
  readonly coatsANight: number;
}

/**
 * Starting values, each to be replaced by the person's own.
 *
 * Amounts: a brushed coat is 4–5 mil wet (1604 ft² a US gallon at one mil, so 4.5 mil = 0.114 L/m²), a sprayed one
 * 3 mil, a padded coat taken as three passes of ¾ mil: common practice. A first coat on bare wood covers 7.4–9.8 m²/L,
 * so 1.1–1.2 times a later brushed one: common practice. Spray loses 35–75 %, half taken; padding and levelling together
 * lose half, brushing nothing: common practice. Waits when padding: 15 min, 30 min, then 2 h, overnight every three:
 * common practice at 21 °C and 50 % relative humidity. Brushing 1–3 h, 2 h taken: common practice.
 * Minutes a square metre: from memory.
 */
export const methodDefaults: Record<PieceMethod, MethodDefaults> = {
  pad: {
    litresPerM2: 0.057,
    firstCoatTimes: 1.2,
    transfer: 0.5,
    minutesPerM2: 20,
    waits: [15, 30, 120],
    coatsANight: 3,
  },
  brush: {
    litresPerM2: 0.114,
    firstCoatTimes: 1.2,
    transfer: 1,
    minutesPerM2: 12,
    waits: [120, 120, 120],
    coatsANight: 3,
  },
  spray: {
    litresPerM2: 0.076,
    firstCoatTimes: 1.2,
    transfer: 0.5,
    minutesPerM2: 6,
    waits: [60, 60, 60],
    coatsANight: 3,
  },
};

/** Work between and after the coats. Minutes a square metre from memory; waits and places common practice. */
export const workDefaults = {
  sandMinutesPerM2: 25,
  deNibMinutesPerM2: 8,
  levelMinutesPerM2: 15,
  rubOutMinutesPerM2: 30,
  /** Levelled after every so many coats, but not after the last. */
  levelEvery: 3,
  /** Days from the last coat to rubbing out: two weeks of the usual two to four. */
  cureDays: 14,
  /** Flat work takes 15–25 % spare. */
  spareShare: 0.2,
} as const;
