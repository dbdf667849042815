import type { Body } from "../notebook/kinds/all.ts";
import type { NotebookReader } from "../notebook/reader.ts";
import type { ScheduleBeside } from "../registry/piece-schedule.ts";
import { airView } from "./air.ts";
import { materialView } from "./material.ts";
import type { PieceView } from "./piece.ts";
import { plannedUsed } from "./planned-used.ts";

/** SI. */
export interface AirOfShop {
  readonly temperature: number;
  readonly relativeHumidity: number;
}

/** What of a piece done before cannot be taken over, because the book does not know it or the shelf no longer has it. */
export type NotKnown =
  | "flakes used up"
  | "flakes not in the book"
  | "alcohol used up"
  | "alcohol not in the book"
  | "liquid never measured"
  | "air never read";

export interface RepeatView {
  readonly airThen: AirOfShop | null;
  readonly airNow: AirOfShop | null;
  readonly notKnown: readonly NotKnown[];
}

const halfADay = 12 * 3_600_000;

/** The reading nearest to an instant, and no more than half a day from it. */
function airNear(read: NotebookReader, instant: string | undefined): AirOfShop | null {
  if (instant === undefined) return null;
  const apart = (happened: string): number => Math.abs(Date.parse(happened) - Date.parse(instant));
  const [nearest] = [...read.ofKind("air-read")].sort((a, b) => apart(a.happened) - apart(b.happened));
  if (nearest === undefined || apart(nearest.happened) > halfADay) return null;
  const { temperature, relativeHumidity } = nearest.body as Body<"air-read">;
  return { temperature: temperature.si, relativeHumidity: relativeHumidity.si };
}

function stateOf(read: NotebookReader, id: string | undefined): "used up" | "not in the book" | undefined {
  const material = id === undefined ? null : materialView(read, id);
  if (material === null) return "not in the book";
  return material.usedUp ? "used up" : undefined;
}

/** What a piece done before brings to its repetition: the air of then and of now, and what is not known any more. */
export const repeatView = (read: NotebookReader, piece: PieceView): RepeatView =>
  read.derive(`repeat:${piece.id}`, (r) => {
    const { resin, solvent } = (piece.schedule ?? {}) as Partial<ScheduleBeside>;
    const [flakes, alcohol] = [stateOf(r, resin), stateOf(r, solvent)];
    const used = plannedUsed(piece, 1);
    const airThen = airNear(r, piece.layers[0]?.happened);
    const now = airView(r);
    return {
      airThen,
      airNow: now === null ? null : { temperature: now.temperature, relativeHumidity: now.relativeHumidity },
      notKnown: [
        ...(flakes === undefined ? [] : [`flakes ${flakes}` as const]),
        ...(alcohol === undefined ? [] : [`alcohol ${alcohol}` as const]),
        ...(used.liquid.coats === 0 ? ["liquid never measured" as const] : []),
        ...(airThen === null ? ["air never read" as const] : []),
      ],
    };
  });
