import type { Body } from "../../../core/notebook/kinds/all.ts";
import type { NotebookReader } from "../../../core/notebook/reader.ts";
import { calendarDay } from "../../../core/pieces/calendar-day.ts";
import { windowsFrom } from "../../../core/pieces/free-evenings.ts";
import { movedWindow, type ShopWindow, windowsFromNow } from "../../../core/pieces/shop-windows.ts";
import type { EveningDraft } from "../../pieces/evening-fields.tsx";

/** An evening that goes elsewhere, or falls out. */
interface EveningChange {
  readonly day: string;
  readonly to: ShopWindow | null;
}

/** When the person is free: the evenings that were kept, or as typed, and what was changed of them one by one. */
export interface FreeTime {
  readonly draft: EveningDraft;
  /** Null from when something is typed. */
  readonly kept: readonly ShopWindow[] | null;
  readonly changes: readonly EveningChange[];
}

/** As many evenings as a plan is looked for in. */
const most = 30;

/** The evenings that were kept last and are still to come; null where there are none. */
export function keptWindows(read: NotebookReader, now: string): readonly ShopWindow[] | null {
  const last = read.ofKind("free-time").at(-1)?.body as Body<"free-time"> | undefined;
  const left = windowsFromNow(last?.windows.map(({ from, to }) => [from, to] as const) ?? [], now);
  return left.length === 0 ? null : left;
}

/** A draft that says what was kept, as far as one evening like another says it. */
export function draftOf(kept: readonly ShopWindow[] | null, today: string): EveningDraft {
  const [first] = kept ?? [];
  return {
    first: first?.[0].slice(0, 10) ?? today,
    which: "every",
    from: first?.[0].slice(11) ?? "18:00",
    until: first?.[1].slice(11) ?? "21:00",
  };
}

/** The evenings that the changes start from; undefined while the draft cannot be read, or ends before it begins. */
function unchanged({ draft, kept }: FreeTime): readonly ShopWindow[] | undefined {
  if (kept !== null) return kept;
  if (!/^\d{4}-\d{2}-\d{2}$/.test(draft.first) || draft.until <= draft.from) return undefined;
  return windowsFrom(calendarDay(draft.first), draft.which, draft.from, draft.until);
}

/** The evenings from now on; undefined while the draft cannot be read, or ends before it begins. */
export function windowsOf(free: FreeTime, now: string): readonly ShopWindow[] | undefined {
  const changed = free.changes.reduce<readonly ShopWindow[] | undefined>((windows, { day, to }) => {
    if (windows === undefined) return undefined;
    return to === null ? windows.filter(([from]) => !from.startsWith(day)) : movedWindow(windows, day, to);
  }, unchanged(free));
  return changed === undefined ? undefined : windowsFromNow(changed, now).slice(0, most);
}
