import type { TypedQuantity } from "../../../core/notebook/kinds/parts.ts";
import { type Composition, pouredTogether } from "../../../core/solution/composition.ts";
import { densityOfSolvent } from "../../../core/solution/density.ts";
import { strengthAt20C } from "../../../core/solution/strength.ts";
import { kilogram } from "../../../core/units.ts";
import { isWeight } from "../shop-units.ts";
import type { Shares } from "./shares.ts";

/** Several bottles as one alcohol: its make-up, each bottle's share of its weight, and all of it where that is told. */
export interface PouredFrom {
  readonly composition: Composition;
  readonly massShares: readonly number[];
  /** All bottles together, when each had its amount: mL where a jug measured one of them, else g. */
  readonly total: TypedQuantity | undefined;
}

const density = (composition: Composition): number => densityOfSolvent(composition, strengthAt20C).value;

/** Kilograms of each bottle, to any scale when only shares are told. Parts of an alcohol are by volume. */
function massesOf(bottles: readonly Composition[], shares: Shares): readonly number[] | undefined {
  if (shares.kind === "open") return undefined;
  if (shares.kind === "one") return [1];
  if (shares.kind === "parts") return bottles.map((one, i) => (shares.shares[i] ?? 0) * density(one));
  return bottles.map((one, i) => {
    const amount = shares.amounts[i];
    return amount === undefined ? 0 : isWeight(amount) ? amount.si : amount.si * density(one);
  });
}

const round = (value: number): number => Number(value.toPrecision(6));

function totalOf(amounts: readonly TypedQuantity[], kg: number, composition: Composition): TypedQuantity {
  if (amounts.every(isWeight)) return { typed: `${round(kg * 1e3)} g`, unit: "g", si: kg };
  const m3 = kg / density(composition);
  return { typed: `${round(m3 * 1e6)} ml`, unit: "ml", si: m3 };
}

/** Undefined while a share is still open. */
export function pouredFrom(bottles: readonly Composition[], shares: Shares): PouredFrom | undefined {
  const masses = massesOf(bottles, shares);
  if (masses === undefined || bottles.length === 0) return undefined;
  const kg = masses.reduce((sum, mass) => sum + mass, 0);
  const { composition } = pouredTogether(
    bottles.map((one, i) => ({ composition: one, mass: kilogram(masses[i] ?? 0) })),
  );
  return {
    composition,
    massShares: masses.map((mass) => mass / kg),
    total: shares.kind === "amounts" ? totalOf(shares.amounts, kg, composition) : undefined,
  };
}

/** A bottle's part of an alcohol that was worked out, kg and m³ at 20 °C. */
export const partOf = (from: PouredFrom, bottles: readonly Composition[], i: number, allKg: number) => {
  const kg = allKg * (from.massShares[i] ?? 0);
  const own = bottles[i];
  return { kg, m3: own === undefined ? 0 : kg / density(own) };
};

/** Flakes of several bags: shares of the weight, and the whole where each was weighed. */
export function weighedFrom(
  shares: Shares,
): { readonly massShares: readonly number[]; readonly total: TypedQuantity | undefined } | undefined {
  if (shares.kind === "open") return undefined;
  if (shares.kind === "one") return { massShares: [1], total: undefined };
  if (shares.kind === "parts") return { massShares: shares.shares, total: undefined };
  const kg = shares.amounts.reduce((sum, amount) => sum + amount.si, 0);
  return {
    massShares: shares.amounts.map((amount) => amount.si / kg),
    total: { typed: `${round(kg * 1e3)} g`, unit: "g", si: kg },
  };
}
