/** Why a field cannot be read; the words belong to the page. */
export interface Fault {
  readonly field: string;
  readonly why:
    | "missing"
    | "two needed"
    | "named twice"
    | "not a number"
    | "too little"
    | "too much"
    | "not whole"
    | "does not fit";
  readonly value: string;
  readonly limit?: number;
}

export const listOf = (typed: string): string[] =>
  typed
    .split(/[,\n;]/)
    .map((part) => part.trim())
    .filter((part) => part !== "");

/** Collects what is wrong while reading on, so that a page can say all of it at once. */
export class FieldReader {
  readonly faults: Fault[] = [];
  fault(field: string, why: Fault["why"], value: string, limit?: number): void {
    this.faults.push({ field, why, value, ...(limit === undefined ? {} : { limit }) });
  }
  number(field: string, typed: string, min: number, max: number): number {
    const value = Number(typed.trim().replace(",", "."));
    if (typed.trim() === "") this.fault(field, "missing", typed);
    else if (!Number.isFinite(value)) this.fault(field, "not a number", typed);
    else if (value < min) this.fault(field, "too little", typed, min);
    else if (value > max) this.fault(field, "too much", typed, max);
    return value;
  }
  whole(field: string, typed: string, min: number, max: number): number {
    const before = this.faults.length;
    const value = this.number(field, typed, min, max);
    if (this.faults.length === before && !Number.isInteger(value)) this.fault(field, "not whole", typed);
    return value;
  }
  names(field: string, typed: string, least: number): string[] {
    const names = listOf(typed);
    const twice = names.find((name, i) => names.indexOf(name) !== i);
    if (names.length === 0) this.fault(field, "missing", typed);
    else if (twice !== undefined) this.fault(field, "named twice", twice);
    else if (names.length < least) this.fault(field, "two needed", typed, least);
    return names;
  }
}
