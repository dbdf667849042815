import { DomainError, inRange } from "../../domain-error.ts";

/** A field with finitely many elements, named 0 … order − 1; 0 and 1 are its zero and its one. */
export interface FiniteField {
  readonly order: number;
  readonly add: (a: number, b: number) => number;
  readonly multiply: (a: number, b: number) => number;
}

/** Largest order: its two tables then hold 130 000 numbers. */
const largest = 256;

/**
 * The powers of primes whose product is n.
 *
 * @example
 * primePowers(12) // => [[2, 2], [3, 1]]
 */
export function primePowers(n: number): readonly (readonly [prime: number, exponent: number])[] {
  const found: (readonly [number, number])[] = [];
  let rest = n;
  for (let p = 2; p * p <= rest; p++) {
    let exponent = 0;
    for (; rest % p === 0; rest /= p) exponent++;
    if (exponent > 0) found.push([p, exponent]);
  }
  return rest > 1 ? [...found, [rest, 1]] : found;
}

/** The digits of a number in base p, lowest first: the coefficients of a polynomial. */
const digitsOf = (x: number, p: number, length: number): number[] =>
  Array.from({ length }, (_, i) => Math.floor(x / p ** i) % p);

const numberOf = (digits: readonly number[], p: number): number =>
  digits.reduceRight((sum, d) => sum * p + d, 0);

/** The product of two polynomials over the numbers mod p, reduced by x^m = −(lower terms of `modulus`). */
function product(
  a: readonly number[],
  b: readonly number[],
  modulus: readonly number[],
  p: number,
): number[] {
  const m = modulus.length;
  const full = new Array<number>(2 * m - 1).fill(0);
  a.forEach((x, i) => {
    b.forEach((y, j) => {
      full[i + j] = ((full[i + j] as number) + x * y) % p;
    });
  });
  for (let top = 2 * m - 2; top >= m; top--) {
    const lead = full[top] as number;
    modulus.forEach((c, i) => {
      const at = top - m + i;
      full[at] = ((full[at] as number) + lead * (p - c)) % p;
    });
  }
  return full.slice(0, m);
}

/** Whether the powers of x run through every element but zero: then the polynomial is irreducible, and primitive. */
function isPrimitive(modulus: readonly number[], p: number): boolean {
  const order = p ** modulus.length;
  const x = numberOf(modulus.length === 1 ? [p - (modulus[0] as number)] : [0, 1], p);
  let power = 1;
  for (let steps = 1; steps < order; steps++) {
    power = numberOf(
      product(digitsOf(power, p, modulus.length), digitsOf(x, p, modulus.length), modulus, p),
      p,
    );
    if (power === 1) return steps === order - 1;
    if (power === 0) return false;
  }
  return false;
}

/**
 * The field of p^m elements: polynomials over the whole numbers mod p, taken modulo a primitive polynomial of degree m.
 *
 * @param order  a power of a prime, scalar
 * @throws DomainError for an order that is no power of a prime, and over 256
 *
 * Valid:    prime powers 2–256
 * Source:   R. Lidl and H. Niederreiter, Finite Fields, 2nd ed. (1997), ch. 2 and 3
 */
export function finiteField(order: number): FiniteField {
  inRange("order", order, { min: 2, max: largest });
  const [[p, m] = [0, 0], ...others] = primePowers(order);
  if (others.length > 0)
    throw new DomainError({
      code: "contradiction",
      field: "order",
      value: order,
      because: "It is no power of a prime.",
    });
  let modulus = digitsOf(1, p, m);
  for (let tried = 1; !isPrimitive(modulus, p); tried++) modulus = digitsOf(tried, p, m);
  const digits = Array.from({ length: order }, (_, x) => digitsOf(x, p, m));
  const table = (of: (a: readonly number[], b: readonly number[]) => number[]) =>
    digits.map((a) => digits.map((b) => numberOf(of(a, b), p)));
  const sums = table((a, b) => a.map((x, i) => (x + (b[i] as number)) % p));
  const products = table((a, b) => product(a, b, modulus, p));
  const look = (tables: readonly (readonly number[])[]) => (a: number, b: number) =>
    (tables[a] as readonly number[])[b] as number;
  return { order, add: look(sums), multiply: look(products) };
}
