import type { NotebookReader } from "../../core/notebook/reader.ts";
import { jarView } from "../../core/views/jar.ts";
import { type MaterialView, materialIds, materialView } from "../../core/views/material.ts";

const ofForm = (read: NotebookReader, form: MaterialView["form"]): readonly MaterialView[] =>
  materialIds(read)
    .map((id) => materialView(read, id))
    .filter((material) => material !== null)
    .filter((material) => material.form === form);

export const resinsOnShelf = (read: NotebookReader): readonly MaterialView[] => ofForm(read, "resin");
export const solventsOnShelf = (read: NotebookReader): readonly MaterialView[] =>
  ofForm(read, "solvent").filter((material) => material.composition !== null);

/** What the winning jar was made of: the first of its flakes and of its alcohols that stood on the shelf. */
export function madeOf(read: NotebookReader, batch: string | null): { resin?: string; solvent?: string } {
  const jar = batch === null ? null : jarView(read, batch);
  const resin = jar?.resins.find((named) => named.material !== null)?.material;
  const solvent = jar?.solvents.find((named) => named.material !== null)?.material;
  return {
    ...(resin === undefined || resin === null ? {} : { resin }),
    ...(solvent === undefined || solvent === null ? {} : { solvent }),
  };
}

export interface Cost {
  readonly amount: number;
  readonly currency: string;
}

/** What the flakes and the alcohol of a plan cost at what was paid for them; null where a price is not known. */
export function costOf(
  resin: MaterialView | null,
  solvent: MaterialView | null,
  resinG: number,
  solventMl: number,
): Cost | null {
  const perKg = resin?.price?.perKg;
  const perM3 = solvent?.price?.perM3;
  if (perKg == null || perM3 == null || resin?.price?.currency !== solvent?.price?.currency) return null;
  return {
    amount: (perKg * resinG) / 1e3 + (perM3 * solventMl) / 1e6,
    currency: resin?.price?.currency ?? "",
  };
}
