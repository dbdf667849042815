import type { TypedQuantity } from "../../core/notebook/kinds/parts.ts";

/** An amount that was worked out, to what a jug or a kitchen scale shows. */
export const asMillilitres = (ml: number): TypedQuantity => {
  const rounded = ml < 20 ? Number(ml.toFixed(1)) : Math.round(ml);
  return { typed: `${rounded} ml`, unit: "ml", si: rounded / 1e6 };
};
export const asGrams = (g: number): TypedQuantity => {
  const rounded = g < 100 ? Number(g.toFixed(1)) : Math.round(g);
  return { typed: `${rounded} g`, unit: "g", si: rounded / 1e3 };
};
