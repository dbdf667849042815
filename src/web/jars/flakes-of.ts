import type { MaterialView } from "../../core/views/material.ts";

/** Flakes off the shelf as the calculations take them; what the seller did not say is taken as none. */
export const flakesOf = (material: MaterialView | undefined) => ({
  moistureMassFraction: material?.resin?.moisture ?? 0,
  waxMassFraction: material?.resin?.wax ?? 0,
  insolubleMassFraction: material?.resin?.insoluble ?? 0,
});
