import type { NotebookReader } from "../../core/notebook/reader.ts";
import {
  type InstrumentView,
  instrumentIds,
  instrumentView,
  type MaterialView,
  materialIds,
  materialView,
} from "../../core/views/material.ts";

export interface OnShelf {
  readonly resin: readonly MaterialView[];
  readonly solvent: readonly MaterialView[];
  readonly other: readonly MaterialView[];
  readonly instrument: readonly InstrumentView[];
}

/** What stands on the shelf, the newest first; what is used up stands last. */
export function onTheShelf(read: NotebookReader): OnShelf {
  const materials = materialIds(read)
    .map((id) => materialView(read, id))
    .filter((material) => material !== null)
    .reverse()
    .sort((a, b) => Number(a.usedUp) - Number(b.usedUp));
  const of = (form: MaterialView["form"]) => materials.filter((material) => material.form === form);
  return {
    resin: of("resin"),
    solvent: of("solvent"),
    other: materials.filter(({ form }) => form !== "resin" && form !== "solvent"),
    instrument: instrumentIds(read)
      .map((id) => instrumentView(read, id))
      .filter((instrument) => instrument !== null),
  };
}

export const isBare = (shelf: OnShelf): boolean =>
  shelf.resin.length + shelf.solvent.length + shelf.other.length + shelf.instrument.length === 0;
