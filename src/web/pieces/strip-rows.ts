import type { ScheduleStep } from "../../core/notebook/kinds/pieces.ts";
import { clock as clockText } from "../../core/pieces/bench-time.ts";
import { inTime } from "../../core/pieces/planned-evenings.ts";
import type { ShopClock } from "../../core/schedule/shop-clock.ts";

export interface Block {
  readonly step: ScheduleStep;
  /** Minutes after midnight. */
  readonly from: number;
  readonly until: number;
  /** Where the wait after it ends, cut off at the end of the row. */
  readonly dryUntil: number;
  /** Whose hands: work at the same time lies under one another, 0 for the first. */
  readonly hand: number;
  /** Drying lines that run side by side lie under one another: 0 for the first. */
  readonly level: number;
}

/** One evening of a schedule, to scale. */
export interface StripRow {
  readonly day: string;
  readonly blocks: readonly Block[];
  /** From the last hands-on minute of it to the first of the next row, in real time [h]; null on the last. */
  readonly gapHours: number | null;
}

const minuteOf = (clock: string): number => {
  const [hours, minutes] = clock.split(":").map(Number);
  return (hours ?? 0) * 60 + (minutes ?? 0);
};

/** The first hand that has nothing to do any more. */
function freeHand(blocks: readonly Block[], from: number): number {
  const busy = new Set(blocks.flatMap(({ until, hand }) => (until > from ? [hand] : [])));
  let hand = 0;
  while (busy.has(hand)) hand += 1;
  return hand;
}

/** When the hands of an evening are done. */
export const endOfRow = (blocks: readonly Block[]): number =>
  Math.max(0, ...blocks.map(({ until }) => until));

/** The evenings of a schedule with what is done in each; steps without an hour are not on the strip. */
export function stripRows(steps: readonly ScheduleStep[], clock: ShopClock): readonly StripRow[] {
  const rows = new Map<string, Block[]>();
  for (const step of inTime(steps)) {
    if (step.day === undefined || step.at === undefined) continue;
    const from = minuteOf(step.at);
    const until = from + (step.minutes ?? 0);
    const blocks = rows.get(step.day) ?? [];
    const dryUntil = Math.min(until + (step.leastWaitMinutes ?? 0), 24 * 60);
    blocks.push({
      step,
      from,
      until,
      dryUntil,
      hand: freeHand(blocks, from),
      level: freeLevel(blocks, until),
    });
    rows.set(step.day, blocks);
  }
  const all = [...rows];
  return all.map(([day, blocks], i) => ({
    day,
    blocks,
    gapHours: gapBetween(day, blocks, all[i + 1], clock),
  }));
}

/** The first level on which nothing dries any more; lines below the fourth would be too many to read. */
export const mostLevels = 4;
function freeLevel(blocks: readonly Block[], from: number): number {
  for (let level = 0; level < mostLevels - 1; level++)
    if (!blocks.some((one) => one.level === level && one.dryUntil > from)) return level;
  return mostLevels - 1;
}

function gapBetween(
  day: string,
  blocks: readonly Block[],
  next: [string, Block[]] | undefined,
  clock: ShopClock,
): number | null {
  const from = next?.[1][0]?.from;
  if (from === undefined || next === undefined) return null;
  const at = (on: string, minute: number) =>
    clock.minutesPastSkip(`${on}T${clockText(Math.min(minute, 1439))}`, "steps");
  return (at(next[0], from) - at(day, endOfRow(blocks))) / 60;
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
