import { withPlaces } from "../words/number.ts";
import type { VerdictPair } from "./questions.ts";

/** A size without its sign, and whether it is more. */
export interface Signed {
  readonly size: string;
  readonly more: boolean;
}

/** The numbers of one difference, all to the same place. */
export interface Figures {
  readonly difference: Signed;
  readonly low: Signed;
  readonly high: Signed;
  readonly matters: string;
}

/** Shares are told in a hundred. */
const inHundred = 100;
const most = 4;

/**
 * The number of decimal places that is known: a third of the jaws' half-width, and more where rounding would carry a
 * jaw over an edge of the band or over nought, so that the words and the numbers never contradict each other.
 */
function placesOf(low: number, high: number, matters: number): number {
  const half = (high - low) / 2;
  const first = half > 0 ? Math.max(0, Math.min(most, Math.ceil(-Math.log10(half / 3)))) : most;
  const edges = [-matters, 0, matters];
  const keepsSides = (places: number) =>
    [low, high].every((end) =>
      edges.every((edge) => Math.sign(Number(end.toFixed(places)) - edge) === Math.sign(end - edge)),
    );
  let places = first;
  while (places < most && !keepsSides(places)) places++;
  return places;
}

export function figuresOf(pair: VerdictPair, matters: number, shares: boolean): Figures {
  const by = shares ? inHundred : 1;
  const [low, high] = [pair.interval[0] * by, pair.interval[1] * by];
  const places = placesOf(low, high, matters * by);
  const signed = (x: number): Signed => ({ size: withPlaces(Math.abs(x), places), more: x >= 0 });
  return {
    difference: signed(pair.difference * by),
    low: signed(low),
    high: signed(high),
    matters: String(Number((matters * by).toPrecision(6))),
  };
}
