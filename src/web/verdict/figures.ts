import { placesKnown, placesThatKeepSides } from "../../core/statistics/verdict/jaw-places.ts";
import { withPlaces } from "../words/number.ts";
import type { VerdictPair } from "./questions.ts";

/** A size without its sign, and whether it is more. */
export interface Signed {
  readonly size: string;
  readonly more: boolean;
}

/** The numbers of one difference, all to the same place. */
export interface Figures {
  /** To the place that is known. */
  readonly difference: Signed;
  /** As close as keeps each on its side of the band's edges. */
  readonly low: Signed;
  readonly high: Signed;
  readonly matters: string;
}

/** Shares are told in a hundred. */
const inHundred = 100;

export function figuresOf(pair: VerdictPair, matters: number, shares: boolean): Figures {
  const by = shares ? inHundred : 1;
  const [low, high] = [pair.interval[0] * by, pair.interval[1] * by];
  const known = placesKnown([low, high]);
  const places = placesThatKeepSides([low, high], matters * by);
  const signed = (x: number, to: number): Signed => ({ size: withPlaces(Math.abs(x), to), more: x >= 0 });
  return {
    difference: signed(pair.difference * by, known),
    low: signed(low, places),
    high: signed(high, places),
    matters: String(Number((matters * by).toPrecision(6))),
  };
}
