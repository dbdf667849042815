import type { QuantityReading } from "../../controls/quantity-reading.ts";
import * as words from "../../words/words.ts";
import { countedOf, type PartDraft, type SizeName, sizeNames } from "./part-draft.ts";
import type { PartFigures } from "./parts-total.ts";

/** Its own name, or what kind of part it is. */
export const partName = (draft: PartDraft): string => draft.name.trim() || words.parts.kinds[draft.part];

export const surfaceName = (part: PartDraft["part"], surface: string): string =>
  (words.parts.surfaces[part] as Readonly<Record<string, string>>)[surface] ?? surface;

/** `4 × Legs`. */
export const partHeading = (draft: PartDraft): string =>
  words.parts.heading(Number(draft.count) || 1, partName(draft));

const small = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

/** Surfaces in a row, in small letters. */
export const surfacesSaid = (draft: PartDraft, surfaces: readonly string[]): string =>
  surfaces.map((surface) => small(surfaceName(draft.part, surface))).join(", ");

const typedSize = (draft: PartDraft, size: SizeName, reading: QuantityReading | undefined): string[] =>
  reading?.ok ? [`${small(words.parts.sizes[size])} ${draft.sizes[size]?.trim()}`] : [];

/** `Square leg: length 550 mm, across the top 40 mm. Counted: side all round, foot`. */
export function partSummary({ draft, reading }: PartFigures): string {
  const names = sizeNames[draft.part] as readonly SizeName[];
  const sizes = names.flatMap((size) => typedSize(draft, size, reading.sizes[size])).join(", ");
  const kind = words.parts.kinds[draft.part];
  const counted = surfacesSaid(draft, countedOf(draft));
  return words.parts.summary(sizes === "" ? kind : `${kind}: ${sizes}`, counted);
}

/** What does not fit together in a part of which each size can be read. */
export function partProblem({ found, reading, draft }: PartFigures): string | undefined {
  if (found === undefined || found.ok) return undefined;
  const untouched = Object.keys(draft.sizes).length === 0 && draft.profile.trim() === "";
  if (untouched || !reading.profile.ok) return undefined;
  const field = found.error.field.replace(/^parts\[0\]\./, "").replace(/\[.*$/, "");
  return words.parts.problems[field] ?? words.parts.doesNotFit;
}
