import type { AreaPartInput } from "../../../core/registry/area-input.ts";
import type { QuantityReading } from "../../controls/quantity-reading.ts";
import { type FieldExpects, fields, readQuantity } from "../../controls/read-quantity.ts";
import { countedOf, optionalSizes, type PartDraft, type SizeName, sizeNames } from "./part-draft.ts";
import { type ProfileReading, readProfile } from "./read-profile.ts";

/** The unit of a bare number: inches once a length was typed in inches or feet, millimetres otherwise. */
export type BareUnit = "mm" | "in";

const inInches = /[\d½⅓⅔¼¾⅛⅜⅝⅞]\s*(?:sq(?:uare)?\.?\s*)?(?:in|inch|inches|ft|foot|feet|["'″′])(?![a-z])/i;

/** What the person measures in, from the first length that says so. */
export function bareUnitOf(parts: readonly PartDraft[]): BareUnit {
  const typed = parts.flatMap((part) => [...Object.values(part.sizes), part.profile]);
  const said = typed.find((text) => inInches.test(text) || /\d\s*(?:mm|cm|m)\b/i.test(text));
  return said !== undefined && inInches.test(said) ? "in" : "mm";
}

const mostOf = (draft: PartDraft, size: SizeName): number =>
  draft.part === "moulding" && size === "length" ? 1000 : 20;

/** One size as it was typed. Of a leg that runs to a point the foot is 0. */
export function readSize(draft: PartDraft, size: SizeName, bareUnit: BareUnit): QuantityReading {
  const least = size === "foot" || size === "top" ? 0 : 1e-4;
  const expects: FieldExpects =
    size === "area"
      ? { ...fields.area, min: 1e-6, max: 200 }
      : { ...fields.length, bareUnit, min: least, max: mostOf(draft, size), digits: 4 };
  return readQuantity(draft.sizes[size] ?? "", expects);
}

export interface PartReading {
  readonly sizes: Readonly<Partial<Record<SizeName, QuantityReading>>>;
  readonly profile: ProfileReading;
  /** As the calculation takes it; undefined while something it needs cannot be read. */
  readonly input: AreaPartInput | undefined;
}

export const isCount = (text: string, least: number, most: number): boolean =>
  /^\d+$/.test(text.trim()) && Number(text) >= least && Number(text) <= most;

const left = (draft: PartDraft, size: SizeName): boolean =>
  optionalSizes.includes(size) && (draft.sizes[size] ?? "").trim() === "";

/** Millimetres without the dust of a conversion: what was typed has no more than six figures. */
const mm = (si: number): number => Number((si * 1000).toPrecision(12));

/** What was typed of a part, each size read, and the part where all of it can be. */
export function readPart(draft: PartDraft, bareUnit: BareUnit): PartReading {
  const names = sizeNames[draft.part] as readonly SizeName[];
  const sizes = Object.fromEntries(names.map((size) => [size, readSize(draft, size, bareUnit)])) as Partial<
    Record<SizeName, QuantityReading>
  >;
  const profile = readProfile(draft.profile, { ...fields.length, bareUnit, max: 20 });
  const counts =
    isCount(draft.count, 1, 1000) &&
    (draft.part !== "carcase" || (isCount(draft.shelves, 0, 200) && isCount(draft.drawers, 0, 200)));
  const whole = names.every((size) => sizes[size]?.ok || left(draft, size));
  if (!counts || !whole || !profile.ok) return { sizes, profile, input: undefined };
  const read = Object.fromEntries(
    names.flatMap((size) => {
      const reading = sizes[size];
      if (!reading?.ok) return [];
      return [size === "area" ? ["areaM2", reading.value.si] : [`${size}Mm`, mm(reading.value.si)]];
    }),
  );
  const pairs = profile.pairs.map(([a, b]) => [mm(a.si), mm(b.si)] as const);
  const input = {
    part: draft.part,
    count: Number(draft.count),
    ...(draft.name.trim() === "" ? {} : { name: draft.name.trim() }),
    ...read,
    ...(draft.part === "panel" ? { grain: draft.grain } : {}),
    ...(draft.part === "turned-leg"
      ? { profile: pairs.map(([atMm, diameterMm]) => ({ atMm, diameterMm })) }
      : {}),
    ...(draft.part === "moulding" && pairs.length > 0
      ? { profile: pairs.map(([acrossMm, upMm]) => ({ acrossMm, upMm })) }
      : {}),
    ...(draft.part === "carcase" ? { shelves: Number(draft.shelves), drawers: Number(draft.drawers) } : {}),
    finished: countedOf(draft),
  };
  return { sizes, profile, input: input as AreaPartInput }; // its own sizes by their names; the calculation checks them
}
