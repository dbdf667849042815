import type { Body } from "../../../core/notebook/kinds/all.ts";
import type { NotebookReader } from "../../../core/notebook/reader.ts";
import { calendarDay } from "../../../core/pieces/calendar-day.ts";
import { windowsFrom } from "../../../core/pieces/free-evenings.ts";
import { type ShopWindow, windowsFromNow } from "../../../core/pieces/shop-windows.ts";
import type { EveningDraft } from "../../pieces/evening-fields.tsx";

/** When the person is free, as typed. */
export interface FreeDraft extends EveningDraft {
  /** Days on which they are not. */
  readonly without: readonly string[];
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
export function draftOf(kept: readonly ShopWindow[] | null, today: string): FreeDraft {
  const [first] = kept ?? [];
  return {
    first: first?.[0].slice(0, 10) ?? today,
    which: "every",
    from: first?.[0].slice(11) ?? "18:00",
    until: first?.[1].slice(11) ?? "21:00",
    without: [],
  };
}

/** The evenings of a draft from now on; undefined while it cannot be read, or ends before it begins. */
export function windowsOf(draft: FreeDraft, now: string): readonly ShopWindow[] | undefined {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(draft.first) || draft.until <= draft.from) return undefined;
  const all = windowsFrom(calendarDay(draft.first), draft.which, draft.from, draft.until);
  return windowsFromNow(all, now)
    .filter(([from]) => !draft.without.includes(from.slice(0, 10)))
    .slice(0, most);
}
