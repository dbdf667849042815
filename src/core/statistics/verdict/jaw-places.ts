const most = 4;

/**
 * The decimal places to which a difference is known: down to a third of its interval's half-width.
 *
 *     places = max(0, ⌈−log₁₀(half/3)⌉), at most 4
 *
 * Valid:    any interval; one of no width is told to 4 places
 * Source:   common practice
 * @example
 * placesKnown([6, 12]) // => 0
 */
export function placesKnown([low, high]: readonly [number, number]): number {
  const half = (high - low) / 2;
  return half > 0 ? Math.max(0, Math.min(most, Math.ceil(-Math.log10(half / 3)))) : most;
}

/**
 * The places to tell an interval's ends with: more than are known where rounding would carry an end over an edge of
 * the band that matters or over nought, so that words and numbers never contradict each other.
 *
 * @param interval  [low, high], in the response's unit
 * @param matters   half the width of the band, in the response's unit
 * @returns         decimal places, at most 4
 * @example
 * placesThatKeepSides([4.7, 11.2], 5) // => 1
 */
export function placesThatKeepSides(interval: readonly [number, number], matters: number): number {
  const edges = [-matters, 0, matters];
  const keeps = (places: number): boolean =>
    interval.every((end) =>
      edges.every((edge) => Math.sign(Number(end.toFixed(places)) - edge) === Math.sign(end - edge)),
    );
  let places = placesKnown(interval);
  while (places < most && !keeps(places)) places++;
  return places;
}
