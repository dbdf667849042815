import { z } from "zod";
import { DomainError } from "../domain-error.ts";
import { midRanks } from "../statistics/ranks/ranks.ts";
import { groupedBy, places, type Reading } from "../statistics/verdict/readings.ts";

const label = z.union([z.string().min(1), z.number()]);

const response = z.strictObject({
  name: z.string().min(1),
  scale: z.enum(["measured", "ordered", "ranked"]),
  /** Steps of an ordered scale, from least to most. */
  levels: z.array(z.string().min(1)).min(2).optional(),
  /** The difference that matters: in the response's unit; for ordered and ranked responses a share from 0 to 1. */
  matters: z.number().min(0).optional(),
});
export type Response = z.output<typeof response>;

const row = z.strictObject({
  patch: label,
  jar: label.nullish(),
  plank: label.nullish(),
  block: label.nullish(),
  judge: label.nullish(),
  occasion: label.nullish(),
  daysSinceCoat: z.number().min(0).nullish(),
  factors: z.record(z.string(), label),
  /** A number, a step of the scale, or null where nothing was read. The higher stands above. */
  value: z.union([z.number(), z.string()]).nullable(),
});
export type Row = z.output<typeof row>;

export const verdictInput = z.strictObject({
  response,
  /** The factor whose levels are compared. */
  compare: z.string().min(1),
  /** The level that all others are held against; without one, all pairs are compared. */
  control: z.string().min(1).optional(),
  appliedTo: z.record(z.string(), z.enum(places)),
  rows: z.array(row).min(2).max(20_000),
  /** What dealings are drawn from where a permutation test cannot try all; the same seed, the same answer. */
  seed: z.string().min(1).default("verdict"),
});
export type VerdictInput = z.output<typeof verdictInput>;

const optionalText = (x: string | number | null | undefined): string | undefined =>
  x === null || x === undefined ? undefined : String(x);

/** The value as a number: its own, or the place of its word on the scale. */
function numberOf(given: Response, value: string | number, i: number): number {
  if (typeof value === "number") return value;
  const field = `rows[${i}].value`;
  if (given.scale !== "ordered" || given.levels === undefined)
    throw new DomainError({
      code: "wrong-type",
      field,
      value,
      because:
        given.scale === "ordered"
          ? "response.levels gives no steps to read a word by."
          : "A number would do.",
    });
  const place = given.levels.indexOf(value);
  if (place < 0)
    throw new DomainError({ code: "unknown-name", field, value, limits: { allowed: given.levels } });
  return place;
}

function readingOf(given: VerdictInput, r: Row, i: number): Reading | undefined {
  if (!Object.hasOwn(r.factors, given.compare))
    throw new DomainError({
      code: "missing",
      field: `rows[${i}].factors.${given.compare}`,
      value: undefined,
    });
  if (r.value === null) return undefined;
  return {
    patch: String(r.patch),
    jar: optionalText(r.jar),
    plank: optionalText(r.plank),
    board: optionalText(r.block),
    judge: optionalText(r.judge),
    factors: Object.fromEntries(Object.entries(r.factors).map(([name, level]) => [name, String(level)])),
    value: numberOf(given.response, r.value, i),
  };
}

/** The rows that hold a value, as readings, with the places that they had. */
export function readingsOf(given: VerdictInput): { readings: Reading[]; rowOf: number[] } {
  const rowOf: number[] = [];
  const readings = given.rows.flatMap((r, i) => {
    const reading = readingOf(given, r, i);
    if (reading === undefined) return [];
    rowOf.push(i);
    return [reading];
  });
  return { readings, rowOf };
}

/** Refuses one code read twice by one judge on one occasion: one of the two belongs to another patch. */
export function checkCodes(given: VerdictInput): void {
  const seen = new Map<string, number>();
  given.rows.forEach((r, i) => {
    if (r.value === null) return;
    const key = JSON.stringify([String(r.patch), optionalText(r.judge), optionalText(r.occasion)]);
    const before = seen.get(key);
    // Readings that nobody told apart may well be repeats.
    if (before !== undefined && r.occasion != null)
      throw new DomainError({
        code: "contradiction",
        field: `rows[${i}].patch`,
        value: r.patch,
        because: `Row ${before + 1} and row ${i + 1} are both ${r.patch}, read by the same judge on the same occasion: one of them is another patch, or another occasion.`,
      });
    seen.set(key, i);
  });
}

/** Refuses ranks that are not ranks: within one judge's row (or board) they are 1 to n, those level sharing their mean. */
export function checkRanks(
  given: VerdictInput,
  readings: readonly Reading[],
  rowOf: readonly number[],
): void {
  if (given.response.scale !== "ranked") return;
  const places = readings.map((r, i) => ({ r, row: (rowOf[i] ?? 0) + 1, i }));
  const occasion = (i: number): string => optionalText(given.rows[rowOf[i] ?? 0]?.occasion) ?? "";
  const byJudge = groupedBy(places, ({ r, i }) => JSON.stringify([r.judge ?? null, occasion(i)]));
  const byBoard = groupedBy(places, ({ r, i }) =>
    JSON.stringify([r.board ?? null, r.judge ?? null, occasion(i)]),
  );
  const isRanking = (group: typeof places): boolean => {
    const values = group.map(({ r }) => r.value);
    return midRanks(values).every((rank, i) => rank === values[i]);
  };
  if (byJudge.every(isRanking)) return;
  const wrong = byBoard.find((group) => !isRanking(group));
  if (wrong === undefined) return;
  const { judge, board } = wrong[0]?.r ?? {};
  throw new DomainError({
    code: "contradiction",
    field: "rows.value",
    value: wrong.map(({ r }) => r.value),
    because: `Rows ${wrong.map(({ row }) => row).join(", ")}${board === undefined ? "" : ` (board ${board}${judge === undefined ? "" : `, ${judge}`})`} are no ranks: ${wrong.length} things ranked are 1 to ${wrong.length}, and two that are level share the mean of their places.`,
  });
}

export function checkCompared(given: VerdictInput): void {
  const names = [...new Set(given.rows.flatMap((r) => Object.keys(r.factors)))];
  if (!names.includes(given.compare))
    throw new DomainError({
      code: "unknown-name",
      field: "compare",
      value: given.compare,
      limits: { allowed: names },
    });
}

/** Refuses a comparison that the rows do not hold: one level only, or a level without a value. */
export function checkLevels(given: VerdictInput, readings: readonly Reading[]): void {
  const laidOut = new Set(given.rows.map((r) => String(r.factors[given.compare])));
  const field = `rows.factors.${given.compare}`;
  if (laidOut.size < 2) throw new DomainError({ code: "no-variation", field, value: [...laidOut] });
  const read = new Set(readings.map((r) => r.factors[given.compare]));
  const empty = [...laidOut].find((level) => !read.has(level));
  if (empty !== undefined)
    throw new DomainError({
      code: "not-enough-data",
      field,
      value: empty,
      because: `No value was read of ${given.compare} ${empty}. ${rowsSaid(given.rows.flatMap((r, i) => (String(r.factors[given.compare]) === empty ? [i] : [])))} would need one.`,
    });
}

/** Refuses what reads the same everywhere: nothing can be told of it. */
export function checkVaries(readings: readonly Reading[], rowOf: readonly number[]): void {
  const [first] = readings;
  if (first === undefined || readings.some((r) => r.value !== first.value)) return;
  throw new DomainError({
    code: "no-variation",
    field: "rows.value",
    value: first.value,
    because: `${rowsSaid(rowOf)} all read the same: a finer scale, or a closer look, would do.`,
  });
}

const mostRowsSaid = 12;

function rowsSaid(at: readonly number[]): string {
  const numbers = at.map((i) => i + 1);
  const few = numbers.slice(0, mostRowsSaid).join(", ");
  return `Row${numbers.length === 1 ? "" : "s"} ${few}${numbers.length > mostRowsSaid ? ` and ${numbers.length - mostRowsSaid} more` : ""}`;
}
