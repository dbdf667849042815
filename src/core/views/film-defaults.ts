import { methodDefaults } from "../pieces/method-defaults.ts";
import type { TradeDefault } from "./default-value.ts";
import type { CoatMethod } from "./waits.ts";

const micrometres = (litresPerM2: number): number => litresPerM2 * 1e3;
const practice = { unit: "µm", known: "common practice" } as const;

/**
 * Liquid spent on a coat where no amount is written, and the share of it that stays on the work. Brushed 4–5 mil, sprayed
 * 3 mil, padded three passes of ¾ mil; spray loses half, padding and levelling together lose half: common practice.
 */
export const coatDefaults = {
  pad: {
    spent: {
      name: "spent-padding-micrometres",
      value: micrometres(methodDefaults.pad.litresPerM2),
      ...practice,
    },
    stays: {
      name: "stays-padding-percent",
      value: 100 * methodDefaults.pad.transfer,
      unit: "%",
      known: "common practice",
    },
  },
  brush: {
    spent: {
      name: "spent-brushing-micrometres",
      value: micrometres(methodDefaults.brush.litresPerM2),
      ...practice,
    },
    stays: {
      name: "stays-brushing-percent",
      value: 100 * methodDefaults.brush.transfer,
      unit: "%",
      known: "common practice",
    },
  },
  spray: {
    spent: {
      name: "spent-spraying-micrometres",
      value: micrometres(methodDefaults.spray.litresPerM2),
      ...practice,
    },
    stays: {
      name: "stays-spraying-percent",
      value: 100 * methodDefaults.spray.transfer,
      unit: "%",
      known: "common practice",
    },
  },
  wipe: {
    spent: { name: "spent-wiping-micrometres", value: 25, unit: "µm", known: "from memory" },
    stays: { name: "stays-wiping-percent", value: 70, unit: "%", known: "from memory" },
  },
  dip: {
    spent: { name: "spent-dipping-micrometres", value: 100, unit: "µm", known: "from memory" },
    stays: { name: "stays-dipping-percent", value: 100, unit: "%", known: "from memory" },
  },
} as const satisfies Record<CoatMethod, { spent: TradeDefault; stays: TradeDefault }>;

/** What work on a surface takes off where nobody measured it. From memory. */
export const workTakesOff = {
  "de-nibbed": { name: "de-nibbing-takes-off-micrometres", value: 1, unit: "µm", known: "from memory" },
  scuffed: { name: "scuffing-takes-off-micrometres", value: 1.5, unit: "µm", known: "from memory" },
  sanded: { name: "sanding-takes-off-micrometres", value: 5, unit: "µm", known: "from memory" },
  levelled: { name: "levelling-takes-off-micrometres", value: 8, unit: "µm", known: "from memory" },
  "rubbed out": { name: "rubbing-out-takes-off-micrometres", value: 12, unit: "µm", known: "from memory" },
} as const satisfies Record<string, TradeDefault>;

/** Share of the first coats on bare wood that sinks in. From memory: a first coat covers less, and a second still dulls. */
export const sinkingDefaults = [
  { name: "first-coat-sinks-percent", value: 50, unit: "%", known: "from memory" },
  { name: "second-coat-sinks-percent", value: 20, unit: "%", known: "from memory" },
  { name: "third-coat-sinks-percent", value: 5, unit: "%", known: "from memory" },
] as const satisfies readonly TradeDefault[];

/** Film to rub out, and what is to be left of it: 3 mil and 1 mil, common practice. */
export const rubbingDefaults = {
  needed: { name: "film-to-rub-out-micrometres", value: 76, ...practice },
  least: { name: "film-left-after-rubbing-micrometres", value: 25, ...practice },
} as const satisfies Record<string, TradeDefault>;
