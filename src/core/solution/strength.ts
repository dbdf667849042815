import { DomainError, inRange } from "../domain-error.ts";
import {
  celsius,
  type Kelvin,
  type KilogramPerCubicMetre,
  kelvinFromCelsius,
  type MassFraction,
  massFraction,
  type VolumeFraction,
  volumeFraction,
} from "../units.ts";
import { aqueousDensity } from "./aqueous-density.ts";
import type { Component } from "./component.ts";
import { findRoot } from "./find-root.ts";

/** The temperature that European and pharmacopoeial volume percent is stated at. */
export const strengthAt20C = kelvinFromCelsius(celsius(20));
/** 60 °F, the temperature of US proof: 15.556 °C, not 15.56 and not 15. */
export const strengthAt60F = kelvinFromCelsius(celsius((60 - 32) / 1.8));

/**
 * Volume fraction of an alcohol in water, as a label states it.
 *
 *     q = w·ρ(w, T) / ρ(1, T)
 *
 * The volume of the alcohol before mixing over the volume of the mixture, both at T: since mixing contracts, the
 * alcohol's and the water's volume fractions do not sum to one. 20 °C and 60 °F give figures that differ by up to
 * 0.06 points; neither may stand for the other.
 *
 * @param alcohol      the liquid beside water
 * @param w            mass fraction [kg/kg], scalar
 * @param temperature  what the strength is stated at [K], scalar
 * @returns            volume fraction [m³/m³], scalar
 * @throws DomainError outside the density's range, and for NaN
 *
 * Valid:    as `aqueousDensity`
 * Accuracy: ethanol 1e-5; isopropanol 1.5e-3; methanol 5e-4
 * Source:   OIML R 22 (1975), definition of the volumetric strength
 * @example
 * volumeFractionFromMassFraction("ethanol", massFraction(0.924077), strengthAt20C) // => 0.95000
 */
export function volumeFractionFromMassFraction(
  alcohol: Component,
  w: MassFraction,
  temperature: Kelvin,
): VolumeFraction {
  if (w === 0 || w === 1) return volumeFraction(w);
  const pure = aqueousDensity(alcohol, massFraction(1), temperature).value;
  // a hair below pure, rounding may pass one by a hair
  return volumeFraction(Math.min(1, (w * aqueousDensity(alcohol, w, temperature).value) / pure));
}

/**
 * Mass fraction of an alcohol in water from its volume fraction: the inverse of `volumeFractionFromMassFraction`.
 *
 * @param alcohol      the liquid beside water
 * @param q            volume fraction [m³/m³], scalar
 * @param temperature  what the strength is stated at [K], scalar
 * @returns            mass fraction [kg/kg], scalar
 * @throws DomainError outside the density's range, and for NaN
 *
 * Valid:    as `aqueousDensity`
 * Accuracy: ethanol 1e-5; isopropanol 1.5e-3; methanol 5e-4; the inversion itself 1e-13
 * Source:   OIML R 22 (1975), definition of the volumetric strength, solved by bracketing
 * @example
 * massFractionFromVolumeFraction("ethanol", volumeFraction(0.95), strengthAt20C) // => 0.92408
 */
export function massFractionFromVolumeFraction(
  alcohol: Component,
  q: VolumeFraction,
  temperature: Kelvin,
): MassFraction {
  const target = volumeFraction(q);
  if (target === 0 || target === 1) return massFraction(target);
  const pure = aqueousDensity(alcohol, massFraction(1), temperature).value;
  const excess = (w: number): number =>
    (w * aqueousDensity(alcohol, massFraction(w), temperature).value) / pure - target;
  return massFraction(findRoot(excess, 0, 1));
}

/**
 * Mass fraction of ethanol from US proof.
 *
 *     q(60 °F) = proof / 200
 *
 * @param proof  US degrees proof, 0–200, scalar
 * @returns      mass fraction of ethanol [kg/kg], scalar
 * @throws DomainError outside 0–200, and for NaN
 *
 * Valid:    0–200 proof
 * Accuracy: 1e-5
 * Source:   27 CFR 30.11 (proof, proof spirits); OIML R 22 for the density
 * @example
 * massFractionFromUsProof(80) // => 0.33361
 */
export function massFractionFromUsProof(proof: number): MassFraction {
  if (!(proof >= 0 && proof <= 200))
    throw new DomainError({
      code: Number.isNaN(proof) ? "not-a-number" : "out-of-range",
      field: "usProof",
      value: proof,
      limits: { min: 0, max: 200 },
    });
  return massFractionFromVolumeFraction("ethanol", volumeFraction(proof / 200), strengthAt60F);
}

/**
 * US proof from the mass fraction of ethanol: the inverse of `massFractionFromUsProof`.
 *
 * Valid:    mass fraction 0–1
 * Source:   as `massFractionFromUsProof`
 */
export const usProofFromMassFraction = (ethanol: MassFraction): number =>
  200 * volumeFractionFromMassFraction("ethanol", ethanol, strengthAt60F);

/**
 * Mass fraction of an alcohol in water from the density of the liquid, as a hydrometer reads it.
 *
 *     ρ(w, T) = density, solved for w
 *
 * @param alcohol      the liquid beside water, one that was measured with it
 * @param density      [kg/m³], scalar, between those of the pure alcohol and of water
 * @param temperature  of the liquid [K], scalar
 * @returns            mass fraction [kg/kg], scalar
 * @throws DomainError `out-of-range` for a density that no mixture of the two has, with the limits
 *
 * Valid:    as `aqueousDensity`
 * Accuracy: that of the density over its slope: ethanol 1e-4 for each 0.02 kg/m³ near 20 % by mass, where it is flattest
 * Source:   as `aqueousDensity`, solved by bracketing
 * @example
 * massFractionFromDensity("ethanol", kilogramPerCubicMetre(913.77), strengthAt20C) // => 0.5000
 */
export function massFractionFromDensity(
  alcohol: Component,
  density: KilogramPerCubicMetre,
  temperature: Kelvin,
): MassFraction {
  const at = (w: number): number => aqueousDensity(alcohol, massFraction(w), temperature).value;
  const limits = { min: at(1), max: at(0) };
  const reading = inRange("densityKgM3", density, limits);
  return massFraction(findRoot((w) => at(w) - reading, 0, 1));
}
