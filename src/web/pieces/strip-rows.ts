import type { ScheduleStep } from "../../core/notebook/kinds/pieces.ts";

export interface Block {
  readonly step: ScheduleStep;
  /** Minutes after midnight. */
  readonly from: number;
  readonly until: number;
  /** Where the wait after it ends, cut off at the end of the row. */
  readonly dryUntil: number;
}

/** One evening of a schedule, to scale. */
export interface StripRow {
  readonly day: string;
  readonly blocks: readonly Block[];
}

const minuteOf = (clock: string): number => {
  const [hours, minutes] = clock.split(":").map(Number);
  return (hours ?? 0) * 60 + (minutes ?? 0);
};

/** The evenings of a schedule with what is done in each; steps without an hour are not on the strip. */
export function stripRows(steps: readonly ScheduleStep[]): readonly StripRow[] {
  const rows = new Map<string, Block[]>();
  for (const step of steps) {
    if (step.day === undefined || step.at === undefined) continue;
    const from = minuteOf(step.at);
    const until = from + (step.minutes ?? 0);
    const blocks = rows.get(step.day) ?? [];
    blocks.push({ step, from, until, dryUntil: Math.min(until + (step.leastWaitMinutes ?? 0), 24 * 60) });
    rows.set(step.day, blocks);
  }
  return [...rows].map(([day, blocks]) => ({ day, blocks }));
}

/** The hours that every row shows, whole, so that the same hour stands under itself. */
export function stripHours(rows: readonly StripRow[]): { readonly from: number; readonly until: number } {
  const blocks = rows.flatMap((row) => row.blocks);
  if (blocks.length === 0) return { from: 18, until: 21 };
  return {
    from: Math.floor(Math.min(...blocks.map((b) => b.from)) / 60),
    until: Math.ceil(Math.max(...blocks.map((b) => b.dryUntil)) / 60),
  };
}
