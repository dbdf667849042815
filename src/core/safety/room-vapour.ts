import type { CubicMetre } from "../units.ts";

/** A room, and how its air is changed. */
export interface Room {
  readonly volume: CubicMetre;
  /** Fresh air that counts: what comes in, over the mixing factor, m³/s. */
  readonly freshAir: number;
}

/** A vapour that is given off evenly for a time. */
export interface Source {
  /** m³/s of vapour. */
  readonly rate: number;
  /** s. */
  readonly duration: number;
}

/**
 * Share of a vapour in a room's air that was clean at first.
 *
 *     while it evaporates: C = (G/Q′)·(1 − exp(−Q′·t/V));   afterwards C falls by exp(−Q′·t/V);   Q′ = Q/K
 *     in a closed room: C = G·t/V
 *
 * @param source   G [m³/s of vapour] and for how long [s]
 * @param room     V [m³], Q′ [m³/s]
 * @param seconds  t since the start, scalar
 * @returns        volume fraction of the air, scalar
 *
 * Valid:    a mixed room; near the work it is more, which the mixing factor in Q′ allows for
 * Accuracy: a factor of 2, as the mixing
 * Source:   industrial ventilation manual, accumulation in a room; as printed in a public lecture
 * @example
 * shareInRoom({ rate: 0.0412 / 3600, duration: 3600 }, { volume: cubicMetre(40), freshAir: 0 }, 3600) // => 0.00103
 */
export function shareInRoom(source: Source, room: Room, seconds: number): number {
  const wet = Math.min(seconds, source.duration);
  const changes = room.freshAir / room.volume;
  if (changes === 0) return (source.rate * wet) / room.volume;
  const built = (source.rate / room.freshAir) * -Math.expm1(-changes * wet);
  return built * Math.exp(-changes * (seconds - wet));
}

/**
 * How long a vapour stays above a level.
 *
 *     from −(V/Q′)·ln(1 − L·Q′/G) until the end + (V/Q′)·ln(Cpeak/L)
 *
 * @param source  as in `shareInRoom`
 * @param room    as in `shareInRoom`
 * @param level   L, volume fraction of the air, scalar
 * @returns       [s]; 0 where it is never reached; infinite in a closed room that passes it
 *
 * Valid:    as `shareInRoom`
 * Accuracy: as `shareInRoom`
 * Source:   the inverse of `shareInRoom`
 * @example
 * timeAbove({ rate: 1, duration: 10 }, { volume: cubicMetre(100), freshAir: 0 }, 0.2) // => 0
 */
export function timeAbove(source: Source, room: Room, level: number): number {
  const peak = shareInRoom(source, room, source.duration);
  if (!(peak > level)) return 0;
  if (room.freshAir === 0) return Number.POSITIVE_INFINITY;
  const turnover = room.volume / room.freshAir;
  const begins = -turnover * Math.log1p((-level * room.freshAir) / source.rate);
  return source.duration + turnover * Math.log(peak / level) - begins;
}
