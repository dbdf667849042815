import type { TypedQuantity } from "../../../core/notebook/kinds/parts.ts";
import type { Composition } from "../../../core/solution/composition.ts";
import { cut, poundsPerUsGallonFromCut } from "../../../core/units.ts";
import type { MaterialView } from "../../../core/views/material.ts";
import type { OpenBook } from "../../book-store/open-book.ts";
import { asGrams, asMillilitres } from "../as-typed.ts";
import { isWeight } from "../shop-units.ts";
import type { Mixed, MixGiven } from "./mix-plan.ts";
import { type PouredFrom, partOf, type weighedFrom } from "./poured-from.ts";
import type { Shares } from "./shares.ts";

/** What goes into the jar: bags and bottles off the shelf, and how each was told. */
export interface Ingredients {
  readonly bags: readonly MaterialView[] | undefined;
  readonly bottles: readonly MaterialView[];
  readonly compositions: readonly Composition[];
  readonly alcohol: PouredFrom;
  readonly flakes: NonNullable<ReturnType<typeof weighedFrom>>;
  readonly bagShares: Shares;
  readonly bottleShares: Shares;
}

export interface Pour {
  readonly material: MaterialView;
  readonly amount: TypedQuantity;
  /** The same on the scale, where the amount is by the jug. */
  readonly grams: TypedQuantity;
}

const told = (shares: Shares, i: number): TypedQuantity | undefined =>
  shares.kind === "amounts" ? shares.amounts[i] : undefined;

/** Each bottle's part, as it was told or as it was worked out. */
export function bottlePours(
  of: Ingredients,
  mixed: Mixed,
  given: MixGiven,
  by: "jug" | "scale",
): readonly Pour[] {
  return of.bottles.map((material, i) => {
    const part = partOf(of.alcohol, of.compositions, i, mixed.solventG / 1e3);
    const worked = by === "jug" ? asMillilitres(part.m3 * 1e6) : asGrams(part.kg * 1e3);
    const whole = of.bottles.length === 1 ? given.alcohol : undefined;
    return {
      material,
      amount: told(of.bottleShares, i) ?? whole ?? worked,
      grams: asGrams(part.kg * 1e3),
    };
  });
}

/** Each bag's part, weighed. */
export function bagPours(
  of: Ingredients & { readonly bags: readonly MaterialView[] },
  mixed: Mixed,
  given: MixGiven,
): readonly Pour[] {
  return of.bags.map((material, i) => {
    const worked = asGrams(mixed.resinG * (of.flakes.massShares[i] ?? 0));
    const whole = of.bags.length === 1 ? given.flakes : undefined;
    return { material, amount: told(of.bagShares, i) ?? whole ?? worked, grams: worked };
  });
}

interface Writing extends Ingredients {
  readonly bags: readonly MaterialView[];
  readonly mixed: Mixed;
  readonly given: MixGiven;
  readonly by: "jug" | "scale";
  readonly code: string;
  readonly glass: string | undefined;
  /** A quantity with the instrument that it is read on. */
  readonly scale: (quantity: TypedQuantity) => TypedQuantity;
  readonly jug: (quantity: TypedQuantity) => TypedQuantity;
}

/** The jar as an entry; returns its id. */
export function writeMix(book: OpenBook, of: Writing): string {
  const on = (quantity: TypedQuantity) => (isWeight(quantity) ? of.scale : of.jug)(quantity);
  const put = (pours: readonly Pour[]) =>
    pours.map(({ material, amount }) => ({ material: material.id, amount: on(amount) }));
  const [resins, solvents] = [
    put(bagPours(of, of.mixed, of.given)),
    put(bottlePours(of, of.mixed, of.given, of.by)),
  ];
  const aimed = of.given.cut;
  return book.write({
    kind: "batch-mixed",
    about: [
      ...new Set([...resins, ...solvents].map((one) => one.material)),
      ...(of.glass === undefined ? [] : [of.glass]),
    ],
    body: {
      code: of.code,
      resins,
      solvents,
      aimedCutLbPerGal: Number(
        (aimed === undefined ? of.mixed.cutLbPerGal : poundsPerUsGallonFromCut(cut(aimed.si))).toPrecision(4),
      ),
      ...(of.glass === undefined ? {} : { vessel: of.glass }),
    },
  });
}
