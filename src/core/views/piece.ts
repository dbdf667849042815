import type { NotebookEntry } from "../notebook/entry.ts";
import type { Body } from "../notebook/kinds/all.ts";
import type { PieceComponent } from "../notebook/kinds/pieces.ts";
import type { NotebookReader } from "../notebook/reader.ts";

/** What the book says of one piece. The schedule is the last one written that still stands. */
export interface PieceView {
  readonly id: string;
  readonly name: string;
  readonly areaM2: number;
  readonly areaTyped: string;
  /** What the area was worked out from; none where it was told. */
  readonly parts: readonly PieceComponent[];
  readonly endGrainTimes: number | null;
  readonly wood: string | null;
  readonly lies: Body<"piece-described">["lies"] | null;
  readonly wanted: string | null;
  readonly schedule: (Body<"piece-scheduled"> & { readonly entry: string }) | null;
  readonly layers: readonly NotebookEntry[];
  readonly handedOver: Body<"piece-handed-over"> | null;
}

const body = <K extends "piece-described" | "piece-scheduled" | "piece-handed-over">(
  entry: NotebookEntry,
): Body<K> => entry.body as Body<K>; // the kind was checked when the entry was read

/** One piece, or null when nothing live makes it. */
export function pieceView(read: NotebookReader, id: string): PieceView | null {
  return read.derive(`piece:${id}`, (reader) => {
    const maker = reader.making(id);
    if (maker === undefined || maker.kind !== "piece-described") return null;
    const described = body<"piece-described">(maker);
    const touching = reader.touching(id);
    const scheduled = touching.findLast((entry) => entry.kind === "piece-scheduled");
    const handed = touching.findLast((entry) => entry.kind === "piece-handed-over");
    return {
      id,
      name: described.name,
      areaM2: described.area.si,
      areaTyped: described.area.typed,
      parts: described.parts ?? [],
      endGrainTimes: described.endGrainTimes ?? null,
      wood: described.wood ?? null,
      lies: described.lies ?? null,
      wanted: described.wanted ?? null,
      schedule:
        scheduled === undefined ? null : { ...body<"piece-scheduled">(scheduled), entry: scheduled.id },
      layers: touching.filter((entry) => entry.kind === "layer-applied"),
      handedOver: handed === undefined ? null : body<"piece-handed-over">(handed),
    };
  });
}

/** Every piece in the book, in the order in which they were written down. A corrected piece counts once, under its first id. */
export function pieceIds(read: NotebookReader): readonly string[] {
  return read.derive("pieces", (reader) => [
    ...new Set(reader.ofKind("piece-described").map((entry) => reader.thingOf(entry))),
  ]);
}
