import type { KnownTo } from "../../core/notebook/entry.ts";
import type { TypedQuantity } from "../../core/notebook/kinds/parts.ts";
import type { WriteDraft } from "../../core/notebook/write-entry.ts";
import type { CalendarDay } from "../../core/pieces/calendar-day.ts";
import { clockIn } from "../bench/state.ts";
import type { QuantityReading } from "../controls/quantity-reading.ts";
import { fields, readQuantity } from "../controls/read-quantity.ts";
import { instantOn, type Shop, type TimeFault } from "./evening-time.ts";

/** What stands above the lines of a printed sheet, as it was pencilled. */
export interface HeadDraft {
  readonly air: string;
  readonly damp: string;
  readonly began: string;
  readonly ended: string;
}
export const blankHead: HeadDraft = { air: "", damp: "", began: "", ended: "" };

export type HeadFault = TimeFault | { readonly code: "no-beginning" };

export interface HeadRead {
  readonly air: QuantityReading;
  readonly damp: QuantityReading;
  /** Only one of the two, or one that cannot be read. */
  readonly airIsHalf: boolean;
  /** `19:30`, where the sheet says when it was begun. */
  readonly began: string | undefined;
  readonly faults: { readonly began?: HeadFault; readonly ended?: HeadFault };
  readonly beganAt: string | undefined;
  readonly endedAt: string | undefined;
}

const isFault = (read: string | HeadFault | undefined): read is HeadFault => typeof read === "object";

/** The instant of a time that was pencilled, undefined where the blank is empty. */
function timeIn(typed: string, day: CalendarDay, shop: Shop, floor: string): string | HeadFault | undefined {
  if (typed.trim() === "") return undefined;
  const clock = clockIn(typed);
  return clock === undefined
    ? { code: "not-a-time", typed: typed.trim() }
    : instantOn(day, shop, clock, floor);
}

/** Reads the head of a sheet: the air needs both figures, an end needs a beginning before it. */
export function readHead(draft: HeadDraft, day: CalendarDay, shop: Shop): HeadRead {
  const air = readQuantity(draft.air, fields.airTemperature);
  const damp = readQuantity(draft.damp, fields.relativeHumidity);
  const empty = draft.air.trim() === "" && draft.damp.trim() === "";
  const began = timeIn(draft.began, day, shop, shop.laidOutAt);
  const beganAt = isFault(began) ? undefined : began;
  const ended = timeIn(draft.ended, day, shop, beganAt ?? shop.laidOutAt);
  const alone = ended !== undefined && began === undefined;
  return {
    ...{ air, damp, airIsHalf: !empty && !(air.ok && damp.ok), beganAt },
    began: beganAt === undefined ? undefined : clockIn(draft.began),
    endedAt: isFault(ended) ? undefined : ended,
    faults: {
      ...(isFault(began) ? { began } : {}),
      ...(isFault(ended) ? { ended } : alone ? { ended: { code: "no-beginning" } } : {}),
    },
  };
}

export const headFits = ({ airIsHalf, faults }: HeadRead): boolean =>
  !airIsHalf && faults.began === undefined && faults.ended === undefined;

/** Writes what stands at the head: the air at the beginning, or at the first line that has a time, and the sitting. */
export function writeHead(
  head: HeadRead,
  first: { readonly at: string; readonly known: KnownTo } | undefined,
  write: WriteDraft,
): readonly string[] {
  const ids: string[] = [];
  if (head.air.ok && head.damp.ok) {
    const at = head.beganAt === undefined ? first : { at: head.beganAt, known: "minute" as const };
    const body: { temperature: TypedQuantity; relativeHumidity: TypedQuantity } = {
      temperature: head.air.value,
      relativeHumidity: head.damp.value,
    };
    if (at !== undefined)
      ids.push(write({ kind: "air-read", body, happened: at.at, happenedKnownTo: at.known }));
  }
  if (head.beganAt !== undefined && head.endedAt !== undefined) {
    const begun = write({ kind: "sitting-begun", body: {}, happened: head.beganAt });
    const minutes = Math.round((Date.parse(head.endedAt) - Date.parse(head.beganAt)) / 60_000);
    const ended = {
      kind: "sitting-ended",
      about: [begun],
      body: { minutes },
      happened: head.endedAt,
    } as const;
    ids.push(begun, write(ended));
  }
  return ids;
}
