import type { Dimension } from "./unit-table.ts";

/** One way of reading what was typed. */
export interface Reading {
  readonly typed: string;
  /** A unit's id, as the notebook keeps it. */
  readonly unit: string;
  /** In SI: kg, m³, K, fraction, m, m², kg/m³. */
  readonly si: number;
  readonly dimension: Dimension;
  /** Of the reading itself, in SI: flakes by the cup are known to a fifth. */
  readonly standardUncertainty?: number;
}
