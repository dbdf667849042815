import { grainWays, type PartKind, partKinds } from "../../../core/area/part.ts";
import type { TypedQuantity } from "../../../core/notebook/kinds/parts.ts";
import type { PieceComponent } from "../../../core/notebook/kinds/pieces.ts";
import { unitNamed } from "../../../core/quantity/unit-table.ts";
import { countedOf, emptyPart, type PartDraft } from "./part-draft.ts";
import type { PartFigures } from "./parts-total.ts";

/** A part as the notebook keeps it: what was measured as it was typed, and which surfaces were counted. */
function keptPart({ draft, reading }: PartFigures): PieceComponent {
  const sizes = Object.fromEntries(
    Object.entries(reading.sizes).flatMap(([size, read]) => (read.ok ? [[size, read.value]] : [])),
  );
  const pairs = reading.profile.ok ? reading.profile.pairs : [];
  return {
    part: draft.part,
    count: Number(draft.count),
    sizes,
    finished: [...countedOf(draft)],
    ...(draft.name.trim() === "" ? {} : { name: draft.name.trim() }),
    ...(pairs.length === 0 ? {} : { profile: pairs.map((pair) => [...pair]) }),
    ...(draft.part === "panel" ? { grain: draft.grain } : {}),
    ...(draft.part === "carcase" ? { shelves: Number(draft.shelves), drawers: Number(draft.drawers) } : {}),
  };
}

/** The parts that were counted, as the notebook keeps them. */
export const keptParts = (parts: readonly PartFigures[]): PieceComponent[] =>
  parts.filter(({ found }) => found?.ok).map(keptPart);

/** Text that still says its unit where what was typed around it has changed. */
const typedWithUnit = ({ typed, unit }: TypedQuantity): string =>
  /[a-z"'″′²]/i.test(typed) ? typed : `${typed} ${unitNamed(unit)?.symbol ?? unit}`;

const isKind = (part: string): part is PartKind => (partKinds as readonly string[]).includes(part);

/** Parts out of the notebook, to be changed; a kind that this version does not know is left out. */
export function draftsFromKept(parts: readonly PieceComponent[]): readonly PartDraft[] {
  return parts.flatMap((kept): PartDraft[] => {
    if (!isKind(kept.part)) return [];
    const sizes = Object.entries(kept.sizes).map(([size, value]) => [size, typedWithUnit(value)]);
    return [
      {
        ...emptyPart(kept.part),
        name: kept.name ?? "",
        count: String(kept.count),
        sizes: Object.fromEntries(sizes),
        profile: (kept.profile ?? []).map((pair) => pair.map(typedWithUnit).join(": ")).join("\n"),
        shelves: String(kept.shelves ?? 0),
        drawers: String(kept.drawers ?? 0),
        grain: grainWays.find((way) => way === kept.grain) ?? "length",
        finished: kept.finished,
      },
    ];
  });
}
