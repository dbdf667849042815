import { type grainWays, type PartKind, surfaceNames } from "../../../core/area/part.ts";
import { usuallyFinished } from "../../../core/area/surfaces.ts";
import type { AreaPartInput } from "../../../core/registry/area-input.ts";

/** The sizes that are asked of each kind of part, in the order in which one would measure them. */
export const sizeNames = {
  panel: ["length", "width", "thickness"],
  "round-panel": ["diameter", "thickness"],
  rail: ["length", "width", "thickness"],
  "round-leg": ["length", "top", "foot"],
  "square-leg": ["length", "top", "foot"],
  "turned-leg": [],
  moulding: ["length", "girth"],
  carcase: ["height", "width", "depth", "thickness", "drawerHeight"],
  free: ["area"],
} as const satisfies Record<PartKind, readonly string[]>;
export type SizeName = (typeof sizeNames)[PartKind][number];

/** Sizes that may be left out: a leg that does not taper, drawer fronts of equal height, a girth that points of the section say. */
export const optionalSizes: readonly SizeName[] = ["foot", "drawerHeight", "girth"];

/** One part as it is being typed. */
export interface PartDraft {
  readonly part: PartKind;
  readonly name: string;
  readonly count: string;
  readonly sizes: Readonly<Partial<Record<SizeName, string>>>;
  readonly profile: string;
  readonly shelves: string;
  readonly drawers: string;
  readonly grain: (typeof grainWays)[number];
  /** Null while the usual surfaces do. */
  readonly finished: readonly string[] | null;
}

export const emptyPart = (part: PartKind): PartDraft => ({
  part,
  name: "",
  count: "1",
  sizes: {},
  profile: "",
  shelves: "0",
  drawers: "0",
  grain: "length",
  finished: null,
});

/** The surfaces that are counted of it, in the order of their names. */
export function countedOf(draft: PartDraft): readonly string[] {
  const counted =
    draft.finished ?? usuallyFinished({ part: draft.part, drawers: Number(draft.drawers) || 0 });
  return surfaceNames[draft.part].filter((surface) => counted.includes(surface));
}

/** The same part with a surface counted that was not, or the other way round. */
export function turned(draft: PartDraft, surface: string): PartDraft {
  const counted = countedOf(draft);
  return {
    ...draft,
    finished: counted.includes(surface) ? counted.filter((s) => s !== surface) : [...counted, surface],
  };
}

/** A part that the core knows in millimetres, as a person would type it. */
export function draftOf(given: AreaPartInput, name: string): PartDraft {
  const numbers = given as Readonly<Record<string, unknown>>; // read by the names of its own sizes
  const text = (key: string, unit: string) =>
    typeof numbers[key] === "number" ? `${numbers[key]} ${unit}` : undefined;
  const sizes = Object.fromEntries(
    sizeNames[given.part].flatMap((size) => {
      const typed = size === "area" ? text("areaM2", "m²") : text(`${size}Mm`, "mm");
      return typed === undefined ? [] : [[size, typed]];
    }),
  );
  return {
    ...emptyPart(given.part),
    name,
    count: String(given.count ?? 1),
    sizes,
    finished: given.finished ?? null,
    ...(given.part === "turned-leg"
      ? { profile: given.profile.map((s) => `${s.atMm}: ${s.diameterMm}`).join("\n") }
      : {}),
    ...(given.part === "carcase"
      ? { shelves: String(given.shelves ?? 0), drawers: String(given.drawers ?? 0) }
      : {}),
  };
}
