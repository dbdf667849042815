const forms = ["rel", "abs", "abs-u", "exact", "at-least", "inside", "includes", "any"] as const;
export type ToleranceForm = (typeof forms)[number];

/** One or more pairs, flat: `["rel", 1e-6, "abs", 1e-12]`. One pair that holds is enough. */
export type Tolerance = readonly (string | number)[];
export type ToleranceTable = Readonly<Record<string, Tolerance>>;

export interface TolerancePair {
  readonly form: ToleranceForm;
  readonly size: number;
}

const isForm = (x: unknown): x is ToleranceForm => (forms as readonly unknown[]).includes(x);

/** The pairs of a tolerance; undefined where it is not of a known form. */
export function pairsOf(tolerance: unknown): readonly TolerancePair[] | undefined {
  if (!Array.isArray(tolerance) || tolerance.length === 0 || tolerance.length % 2 !== 0) return undefined;
  const pairs: TolerancePair[] = [];
  for (let i = 0; i < tolerance.length; i += 2) {
    const form: unknown = tolerance[i];
    const size: unknown = tolerance[i + 1];
    if (!isForm(form) || typeof size !== "number" || !(size >= 0)) return undefined;
    pairs.push({ form, size });
  }
  return pairs;
}

/** The tolerance of the innermost key that has one, else that of `*`. */
export function toleranceFor(table: ToleranceTable, keys: readonly string[]): unknown {
  for (let i = keys.length - 1; i >= 0; i--) {
    const key = keys[i] as string;
    if (key !== "*" && Object.hasOwn(table, key)) return table[key];
  }
  return table["*"];
}

/** Whether a number is near enough by one pair; `u` is the expected standard uncertainty that `abs-u` counts in. */
export function holds(pair: TolerancePair, expected: number, got: number, u: number | undefined): boolean {
  // The file's numbers are decimal: a difference of exactly the tolerance must not fail by how they round in binary.
  const rounding = 4 * Number.EPSILON * Math.max(Math.abs(expected), Math.abs(got));
  const distance = Math.abs(got - expected) - rounding;
  switch (pair.form) {
    case "exact":
      return got === expected;
    case "rel":
      return distance <= pair.size * Math.abs(expected);
    case "abs":
      return distance <= pair.size;
    case "abs-u":
      return u !== undefined && distance <= pair.size * u;
    case "at-least":
      return got + rounding >= expected - pair.size;
    default:
      return false;
  }
}

export const toleranceText = (pairs: readonly TolerancePair[] | undefined): string =>
  pairs === undefined ? "none that is known" : pairs.map(({ form, size }) => `${form} ${size}`).join(" or ");
