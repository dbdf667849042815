/** Why a value was refused. A closed set: every edge (page, command line, HTTP) has words for each. */
export const domainCodes = [
  "out-of-range",
  "not-a-number",
  "missing",
  "unknown-field",
  "unknown-name",
  "wrong-type",
  "contradiction",
  "not-enough-data",
  "no-variation",
  "no-convergence",
] as const;
export type DomainCode = (typeof domainCodes)[number];

/** What would do instead: a range, or the names that are known. */
export interface Limits {
  readonly min?: number;
  readonly max?: number;
  readonly allowed?: readonly string[];
}

export interface DomainDetail {
  readonly code: DomainCode;
  /** The name of the quantity, as the caller knows it; a path such as `solvent.massFraction` where it is nested. */
  readonly field: string;
  readonly value: unknown;
  readonly limits?: Limits;
  /** One plain sentence where code, field and limits do not say it all. */
  readonly because?: string;
}

/** Thrown by a formula for a value outside what its source covers. Edges translate it once. */
export class DomainError extends Error {
  override readonly name = "DomainError";
  readonly detail: DomainDetail;
  constructor(detail: DomainDetail) {
    super(`${detail.field}: ${detail.code}${detail.because === undefined ? "" : ` (${detail.because})`}`);
    this.detail = detail;
  }
}

/** Returns `value` when it lies within [min, max]; NaN never does. */
export function inRange<T extends number>(
  field: string,
  value: T,
  limits: { readonly min: number; readonly max: number },
): T {
  if (!(value >= limits.min && value <= limits.max)) {
    throw new DomainError({
      code: Number.isNaN(value) ? "not-a-number" : "out-of-range",
      field,
      value,
      limits,
    });
  }
  return value;
}
