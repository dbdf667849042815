import type { Body } from "../notebook/kinds/all.ts";
import type { NotebookReader } from "../notebook/reader.ts";
import { defaultValue, isChanged, type TradeDefault } from "./default-value.ts";

export type CoatMethod = Body<"layer-applied">["method"];

/**
 * Least waits between coats. Padded: 15 to 120 min, an hour taken; brushed: 1 to 3 h, 2 h taken; sprayed: an hour. All
 * common practice in a shop of about 21 °C and 50 % relative humidity; each is changed by a `default-changed` of its name.
 */
export const waitDefaults = {
  pad: { name: "wait-after-padding-minutes", value: 60, unit: "minutes", known: "common practice" },
  brush: { name: "wait-after-brushing-minutes", value: 120, unit: "minutes", known: "common practice" },
  spray: { name: "wait-after-spraying-minutes", value: 60, unit: "minutes", known: "common practice" },
  wipe: { name: "wait-after-wiping-minutes", value: 60, unit: "minutes", known: "from memory" },
  dip: { name: "wait-after-dipping-minutes", value: 120, unit: "minutes", known: "from memory" },
} as const satisfies Record<CoatMethod, TradeDefault>;

/** What is usual, or what the person put in its place. Seconds. */
export interface CommonWait {
  readonly seconds: number;
  readonly setByHand: boolean;
  readonly known: TradeDefault["known"];
}

export const commonWait = (read: NotebookReader, method: CoatMethod): CommonWait => ({
  seconds: 60 * waitMinutes(read, method),
  setByHand: isChanged(read, waitDefaults[method]),
  known: waitDefaults[method].known,
});

export const waitMinutes = (read: NotebookReader, method: CoatMethod): number =>
  defaultValue(read, waitDefaults[method]);
