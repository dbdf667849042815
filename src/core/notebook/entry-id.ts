import { epochMilliseconds } from "./instant.ts";

/** What writing an entry needs from outside: clock, randomness, and who and where this device is. */
export interface WritingEffects {
  /** The instant, UTC, as 2026-10-05T18:30:00.000Z. */
  readonly now: () => string;
  readonly randomBytes: (length: number) => Uint8Array;
  /** IANA name of the zone that the person is in. */
  readonly zone: string;
  /** This device's id. */
  readonly device: string;
  /** The next number of this device: 1, 2, 3 … without a gap. */
  readonly nextSeq: () => number;
  /** Who is signed in; null where nobody signs in. */
  readonly by: string | null;
}

/**
 * A new UUID, version 7: 48 bits of milliseconds, 12 bits of this device's running number, 62 random bits. The number
 * keeps the order in which one device wrote within a millisecond (a fixed-length counter).
 *
 * Source: RFC 9562 (2024), sections 5.7 and 6.2, method 1
 */
export function newEntryId(
  instant: string,
  seq: number,
  randomBytes: (length: number) => Uint8Array,
): string {
  const random = randomBytes(8);
  const time = epochMilliseconds(instant).toString(16).padStart(12, "0");
  const counter = (seq & 0xfff).toString(16).padStart(3, "0");
  const tail = Array.from(random, (byte, i) => (i === 0 ? (byte & 0x3f) | 0x80 : byte));
  const hex = tail.map((byte) => byte.toString(16).padStart(2, "0")).join("");
  return `${time.slice(0, 8)}-${time.slice(8)}-7${counter}-${hex.slice(0, 4)}-${hex.slice(4)}`;
}
