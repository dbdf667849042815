import type { Quantity } from "./compare.ts";
import type { Unread } from "./read-folder.ts";

export interface CaseReport {
  readonly id: string;
  readonly outcome: "passed" | "failed" | "shown";
  /** Why it failed before anything could be compared, or why it is only shown. */
  readonly why?: string;
  readonly quantities: readonly Quantity[];
  readonly published?: unknown;
}
export interface TopicReport {
  readonly topic: string;
  readonly passed: number;
  readonly failed: number;
  readonly notRead: number;
  readonly cases: readonly CaseReport[];
  readonly unread: readonly Unread[];
  readonly sources: Readonly<Record<string, string>>;
}

export type Counts = Pick<TopicReport, "topic" | "passed" | "failed" | "notRead">;

/** JSON has no word for a number that is none; here it must not look like an absent one. */
export const jsonOf = (x: unknown): string =>
  JSON.stringify(x, (_, value) =>
    typeof value === "number" && !Number.isFinite(value) ? String(value) : value,
  );

const cell = (x: unknown): string => (x === undefined ? "absent" : typeof x === "string" ? x : jsonOf(x));
const short = (x: unknown): string => {
  const text = cell(x);
  return text.length > 120 ? `${text.slice(0, 119)}…` : text;
};
const word = (ok: boolean | null): string => (ok === null ? "shown" : ok ? "ok" : "FAILED");

/** A line a quantity: id, quantity, expected, got, tolerance, residual, ok; between tabs. */
export function* linesOf(report: CaseReport): Generator<string> {
  if (report.why !== undefined)
    yield [report.id, "", "", report.why, "", "", report.outcome === "shown" ? "shown" : "FAILED"].join("\t");
  for (const q of report.quantities)
    yield [
      report.id,
      q.quantity,
      short(q.expected),
      short(q.got),
      q.tolerance,
      q.residual === null ? "" : q.residual.toPrecision(3),
      word(q.ok),
    ].join("\t");
  if (report.published !== undefined)
    yield [report.id, "as published", short(report.published), "", "", "", "shown"].join("\t");
}

export const unreadLine = (unread: Unread): string =>
  [unread.id, "", "", unread.why, "", "", "NOT READ"].join("\t");

export const summary = (counts: Counts): string =>
  `${counts.topic}: ${counts.passed} passed, ${counts.failed} failed, ${counts.notRead} not read`;

/** 0 all passed; 1 a case failed; 3 a case was not read; 4 there was no case. */
export function exitCodeFor(counts: Counts): number {
  if (counts.failed > 0) return 1;
  if (counts.notRead > 0) return 3;
  return counts.passed === 0 ? 4 : 0;
}
