import { inRange } from "../domain-error.ts";
import { type ShopClock, shopClock } from "../schedule/shop-clock.ts";
import type { Begun, BegunOn } from "./begun.ts";
import { checkEvenings, type Evening } from "./evening.ts";
import { checkSteps, type FinishingStep } from "./finishing-step.ts";
import { mostHands, mostSurfaces, type PieceSurface } from "./surfaces.ts";

export interface PieceToPlan {
  /** Surface to be finished [m²], above 0 to 200. */
  readonly areaM2: number;
  /** Of which end grain [m²], and how many times as much of the first coat it takes; none unless told. */
  readonly endGrain?: { readonly areaM2: number; readonly times: number };
  /** In order, 1 to 40 of them coats. */
  readonly steps: readonly FinishingStep[];
  /** Its sides and parts, where they are not worked all at once; in order. */
  readonly surfaces?: readonly PieceSurface[];
  /** From the end of a coat until the piece may be turned onto it [min]; each coat's least wait unless told. */
  readonly turnMinutes?: number;
  /** People who work at once, one to a surface; one unless told. */
  readonly hands?: number;
  /** How many can lie drying at once, a thing that is turned counted once; any number unless told. */
  readonly dryingPlaces?: number;
  /** In order of time, none overlapping. */
  readonly evenings: readonly Evening[];
  /** In which the evenings are meant, as Europe/Berlin; without one every day has 24 hours. */
  readonly zone?: string;
  /** Share mixed on top of what is reckoned to be used. */
  readonly spareShare?: number;
  /** What was done before; the rest goes into the evenings after it. */
  readonly begun?: Begun;
  /** The same, where it is not the same on every surface. */
  readonly begunOn?: readonly BegunOn[];
}

/** The clock on the wall of a piece's evenings. */
export const clockOf = ({ zone = "UTC" }: Pick<PieceToPlan, "zone">): ShopClock => shopClock(zone);

/**
 * Refuses a piece that cannot be planned, whatever its evenings hold.
 *
 * @throws DomainError that names what is out of range or out of order
 */
export function checkPiece(piece: PieceToPlan): void {
  inRange("areaM2", piece.areaM2, { min: 1e-4, max: 200 });
  if (piece.endGrain !== undefined) {
    inRange("endGrainM2", piece.endGrain.areaM2, { min: 0, max: piece.areaM2 });
    inRange("endGrainTimes", piece.endGrain.times, { min: 1, max: 10 });
  }
  if (piece.turnMinutes !== undefined) inRange("turnMinutes", piece.turnMinutes, { min: 0, max: 10_080 });
  if (piece.hands !== undefined) inRange("hands", piece.hands, { min: 1, max: mostHands });
  if (piece.dryingPlaces !== undefined)
    inRange("dryingPlaces", piece.dryingPlaces, { min: 1, max: mostSurfaces });
  checkSteps(piece.steps);
  checkEvenings(piece.evenings);
}
