import { DomainError, inRange } from "../domain-error.ts";
import {
  type KilogramPerCubicMetre,
  kilogramPerCubicMetre,
  type MassFraction,
  massFraction,
} from "../units.ts";

/**
 * Dissolved resin, kg/m³. Published values differ (solid lac 1140–1210), hence its standard uncertainty.
 * Source: a production formula as printed in a government handbook of the trade: 31 lb of flakes with 10¼ gal (69 lb)
 * of alcohol makes 13⅓ gal at 7.5 lb/gal, which is 1205.
 */
export const usualPartialDensity = kilogramPerCubicMetre(1205);
/** A unit mistyped (1.205 for 1205) lies far outside. */
export const validPartialDensity = {
  min: kilogramPerCubicMetre(500),
  max: kilogramPerCubicMetre(3000),
} as const;

/** Flakes as weighed; the fractions are of the mass as weighed. */
export interface Resin {
  readonly massShare: number;
  readonly moisture: MassFraction;
  readonly wax: MassFraction;
  readonly insoluble: MassFraction;
  readonly partialDensity: KilogramPerCubicMetre;
}

/** What one kilogram of flakes, as weighed, brings into a jar. */
export interface ResinBlend {
  /** Dry resin, wax and insolubles included. */
  readonly dry: MassFraction;
  readonly moisture: MassFraction;
  readonly wax: MassFraction;
  readonly insoluble: MassFraction;
  /** Mean density of the dry resin in solution. */
  readonly partialDensity: KilogramPerCubicMetre;
}

export const plainResin: Resin = {
  massShare: 1,
  moisture: massFraction(0),
  wax: massFraction(0),
  insoluble: massFraction(0),
  partialDensity: usualPartialDensity,
};

function checked(resin: Resin, field: string): Resin {
  inRange(`${field}.partialDensityKgM3`, resin.partialDensity, validPartialDensity);
  const other = resin.moisture + resin.wax + resin.insoluble;
  if (!(resin.moisture < 1) || other > 1)
    throw new DomainError({
      code: "contradiction",
      field: `${field}.moistureMassFraction`,
      value: resin.moisture,
      because: `Moisture, wax and insolubles come to ${other}; together they are at most 1, and moisture is below 1.`,
    });
  return resin;
}

/**
 * Several resins weighed out together.
 *
 *     dry = Σ si (1 − moisturei),   1/ρ = Σ si (1 − moisturei)/ρi / dry
 *
 * @param resins  n resins whose shares of the mass as weighed sum to one
 * @returns       what one kilogram of them brings
 * @throws DomainError when the shares do not sum to one, when moisture, wax and insolubles are more than all, and
 *                     outside `validPartialDensity`
 *
 * Valid:    any
 * Accuracy: exact; volumes of the resins add
 * Source:   conservation of mass
 * @example
 * blendOfResins([plainResin]).dry // => 1
 */
export function blendOfResins(resins: readonly Resin[], field = "resins"): ResinBlend {
  const shares = resins.reduce((sum, r) => sum + r.massShare, 0);
  if (!(Math.abs(shares - 1) <= 1e-6))
    throw new DomainError({
      code: "contradiction",
      field: `${field}.massShare`,
      value: shares,
      because: "The shares of the resins sum to 1.",
    });
  resins.forEach((r, i) => {
    checked(r, `${field}[${i}]`);
  });
  const mean = (of: (r: Resin) => number): number =>
    resins.reduce((sum, r) => sum + (r.massShare / shares) * of(r), 0);
  const dry = mean((r) => 1 - r.moisture);
  return {
    dry: massFraction(dry),
    moisture: massFraction(1 - dry),
    wax: massFraction(mean((r) => r.wax)),
    insoluble: massFraction(mean((r) => r.insoluble)),
    partialDensity: kilogramPerCubicMetre(dry / mean((r) => (1 - r.moisture) / r.partialDensity)),
  };
}

/** The same flakes, damper by a mass fraction and denser once dissolved: how what is not known of them is carried through. */
export const movedResin = (resin: ResinBlend, damper: number, denser: number): ResinBlend => ({
  ...resin,
  moisture: massFraction(resin.moisture + damper),
  dry: massFraction(resin.dry - damper),
  partialDensity: kilogramPerCubicMetre(resin.partialDensity + denser),
});
