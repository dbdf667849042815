import type { DomainDetail, Limits } from "../domain-error.ts";

/** The one shape in which every door says what is wrong with an input. */
export interface Problem {
  readonly code: string;
  readonly field: string;
  readonly message: string;
  readonly value: unknown;
  readonly limits: Limits | null;
}

const number = (x: number): string => String(Number(x.toPrecision(6)));

function wouldDo(limits: Limits | undefined): string {
  if (limits?.allowed !== undefined) return ` One of these would do: ${limits.allowed.join(", ")}.`;
  if (limits?.min !== undefined && limits.max !== undefined)
    return ` Between ${number(limits.min)} and ${number(limits.max)} would do.`;
  if (limits?.min !== undefined) return ` ${number(limits.min)} or more would do.`;
  if (limits?.max !== undefined) return ` ${number(limits.max)} or less would do.`;
  return "";
}

const sentences: Record<DomainDetail["code"], (field: string, value: string) => string> = {
  "out-of-range": (field, value) => `${field} is ${value}, which is out of range.`,
  "not-a-number": (field, value) => `${field} is ${value}, which is not a number.`,
  missing: (field) => `${field} is missing.`,
  "unknown-field": (field) => `${field} is not a field here.`,
  "unknown-name": (field, value) => `${field} is ${value}, which is not known.`,
  "wrong-type": (field, value) => `${field} is ${value}, which is of the wrong kind.`,
  contradiction: (field, value) => `${field} is ${value}, which does not fit the rest.`,
  "not-enough-data": (field) => `${field} does not hold enough to work with.`,
  "no-variation": (field) => `${field} does not vary.`,
  "no-convergence": (field) => `${field}: no answer was reached.`,
};

const shown = (value: unknown): string => {
  if (value === undefined) return "absent";
  const text = typeof value === "number" ? String(value) : JSON.stringify(value);
  return text.length > 80 ? `${text.slice(0, 77)}…` : text;
};

export function problemFromDomain(detail: DomainDetail): Problem {
  const because = detail.because === undefined ? "" : ` ${detail.because}`;
  return {
    code: detail.code,
    field: detail.field,
    message: sentences[detail.code](detail.field, shown(detail.value)) + because + wouldDo(detail.limits),
    value:
      typeof detail.value === "number" && !Number.isFinite(detail.value)
        ? String(detail.value)
        : (detail.value ?? null),
    limits: detail.limits ?? null,
  };
}
