/** A seeded source of numbers in [0, 1). Every drawn thing takes one as an argument, and keeps its seed. */
export type Random = () => number;

/** FNV-1a, 32 bit, of the UTF-16 code units: turns a typed seed into four words of state. */
function hash32(text: string, basis: number): number {
  let h = basis >>> 0;
  for (let i = 0; i < text.length; i++) h = Math.imul(h ^ text.charCodeAt(i), 0x01000193) >>> 0;
  return h;
}

/**
 * A generator of uniform numbers in [0, 1) with 32 bits each, the same for the same seed on every machine.
 *
 * Source: xoshiro128**, D. Blackman and S. Vigna, "Scrambled linear pseudorandom number generators",
 * ACM Trans. Math. Softw. 47 (2021) 36.
 */
export function randomFromSeed(seed: string): Random {
  let [a, b, c, d] = [0x811c9dc5, 0x01234567, 0x9e3779b9, 0xdeadbeef].map((basis) => hash32(seed, basis)) as [
    number,
    number,
    number,
    number,
  ];
  if ((a | b | c | d) === 0) d = 1; // the all-zero state never leaves zero
  const next = (): number => {
    const rotated = Math.imul(b, 5);
    const result = Math.imul((rotated << 7) | (rotated >>> 25), 9);
    const t = b << 9;
    c ^= a;
    d ^= b;
    b ^= c;
    a ^= d;
    c ^= t;
    d = (d << 11) | (d >>> 21);
    return (result >>> 0) / 2 ** 32;
  };
  for (let i = 0; i < 16; i++) next(); // neighbouring seeds part company
  return next;
}

/** A whole number in [0, n). */
export const randomIndex = (random: Random, n: number): number => Math.floor(random() * n);

/** Brings the first so many of a list into drawn order, in place (Fisher–Yates; Durstenfeld, CACM 7 (1964) 420). */
export function shuffle<T>(list: { [at: number]: T }, count: number, random: Random): void {
  for (let i = count - 1; i > 0; i--) {
    const j = randomIndex(random, i + 1);
    const kept = list[i] as T;
    list[i] = list[j] as T;
    list[j] = kept;
  }
}

/** A new list in drawn order. */
export function shuffled<T>(items: readonly T[], random: Random): T[] {
  const out = [...items];
  shuffle(out, out.length, random);
  return out;
}

/** A standard normal number (Box–Muller, one of the pair). */
export function randomNormal(random: Random): number {
  return Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}
