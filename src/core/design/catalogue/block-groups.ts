import { finiteField, primePowers } from "./finite-field.ts";

/** A way of moving points about, as the point that each one goes to. */
export type Move = readonly number[];

const range = (n: number): number[] => Array.from({ length: n }, (_, i) => i);

/** Points in rings of `length` that all turn by one step; points left over stay. */
const turning = (points: number, length: number): Move =>
  range(points).map((x) => {
    const ring = Math.floor(x / length);
    return (ring + 1) * length > points ? x : ring * length + (((x % length) + 1) % length);
  });

/** Points in rings of `length`, each numbered by residues, multiplied by a unit of the ring. */
const multiplied = (points: number, length: number, by: number): Move =>
  range(points).map((x) => {
    const ring = Math.floor(x / length);
    return (ring + 1) * length > points ? x : ring * length + (((x % length) * by) % length);
  });

const commonDivisor = (a: number, b: number): number => (b === 0 ? a : commonDivisor(b, a % b));

/** Shifts by every element of the field of v elements, alone and with multiplication by a fixed one. */
function fieldGroups(v: number): Move[][] {
  const [[p, e] = [0, 0], ...others] = primePowers(v);
  if (others.length > 0 || e < 2 || v > 64) return [];
  const field = finiteField(v);
  const shifts = range(e).map((i) => range(v).map((x) => field.add(x, p ** i)));
  const times = range(v)
    .slice(2)
    .map((a) => range(v).map((x) => field.multiply(a, x)));
  return [...times.map((t) => [...shifts, t]), shifts];
}

/**
 * Groups that designs of v points often have: rings that turn, with up to two points that stay, rings that are also
 * multiplied, and the shifts of a field. The larger groups come first: they leave the least to search.
 */
export function likelyGroups(v: number): readonly (readonly Move[])[] {
  const rings = [v, v - 1, v - 2].flatMap((moving) =>
    range(moving + 1).filter((length) => length >= 3 && moving % length === 0 && v - moving < length),
  );
  const lengths = [...new Set(rings)].sort((a, b) => b - a);
  const turned = lengths.map((length) => [turning(v, length)]);
  const multipliers = lengths.flatMap((length) =>
    range(length)
      .filter((by) => by > 1 && commonDivisor(by, length) === 1)
      .map((by) => [turning(v, length), multiplied(v, length, by)]),
  );
  return [...multipliers, ...fieldGroups(v), ...turned];
}
