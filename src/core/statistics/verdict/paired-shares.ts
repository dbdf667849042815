import { inRange } from "../../domain-error.ts";
import { rootBetween } from "../numeric/root.ts";

/**
 * The score interval for the difference of two shares seen in the same blocks: P(A above B) − P(B above A) from
 * blocks in which A was above, below or level. It does not collapse when all blocks agree, as an interval from the
 * scatter would.
 *
 *     (a − b − nδ)² = z² n [2p̃ + δ(1 − δ)],   p̃ the likeliest share below, given δ
 *
 * Shares of a block (two of three judges saw A above) may be added up to `above` and `below`; the interval is then
 * wider than it need be, since a share varies less than a whole block.
 *
 * @param above       blocks in which A was above, scalar
 * @param below       blocks in which A was below, scalar
 * @param blocks      n, scalar
 * @param multiplier  z, scalar
 * @returns           [low, high] within [−1, 1]
 * @throws DomainError for counts that do not fit in n, and NaN
 *
 * Valid:    n ≥ 1, above + below ≤ n
 * Accuracy: 1e-9 absolute
 * Source:   T. Tango, Statist. Med. 17 (1998) 891
 * @example
 * pairedSharesInterval(16, 1, 40, 1.959963985)[0] // => 0.2020
 */
export function pairedSharesInterval(
  above: number,
  below: number,
  blocks: number,
  multiplier: number,
): readonly [number, number] {
  inRange("blocks", blocks, { min: 1, max: 1e9 });
  inRange("below", below, { min: 0, max: blocks });
  inRange("above", above, { min: 0, max: blocks - below + 1e-9 });
  const score = (delta: number): number => {
    const b = -above - below + (2 * blocks - above + below) * delta;
    const c = -below * delta * (1 - delta);
    const p = (Math.sqrt(Math.max(0, b * b - 8 * blocks * c)) - b) / (4 * blocks);
    const variance = blocks * Math.max(0, 2 * p + delta * (1 - delta));
    return (above - below - blocks * delta) / Math.sqrt(variance + 1e-300);
  };
  const estimate = (above - below) / blocks;
  const edge = 1 - 1e-12;
  const low = score(-edge) <= multiplier ? -1 : rootBetween((d) => score(d) - multiplier, -edge, estimate);
  const high = score(edge) >= -multiplier ? 1 : rootBetween((d) => score(d) + multiplier, estimate, edge);
  return [low, high];
}
