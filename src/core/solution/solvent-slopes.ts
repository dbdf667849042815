import { celsiusFromKelvin, kelvin } from "../units.ts";
import { densityOfSolvent } from "./density.ts";
import type { Instruments } from "./instruments.ts";
import type { Recipe } from "./mix.ts";
import { strengthAt20C } from "./strength.ts";
import { labelledStrength } from "./strength-shift.ts";

/** How a solvent's density follows what is not quite known of it: relative, for one unit of each. */
export interface SolventSlopes {
  /** kg/m³, at 20 °C and at the temperature that volumes are read at. */
  readonly at20C: number;
  readonly atT: number;
  /** Standard uncertainty of the density itself [kg/m³]. */
  readonly uncertainty: number;
  /** d ln ρT/dT [1/K]. */
  readonly perKelvin: number;
  /** d ln ρ/dq at 20 °C and at T, q the strength on the label as a volume fraction. */
  readonly perStrengthAt20C: number;
  readonly perStrengthAtT: number;
}

const slope = (up: number, down: number, step: number): number =>
  step === 0 ? 0 : Math.log(up / down) / step;

/** Over ± one standard uncertainty, cut short where the density's range ends. */
function slopeInTemperature({ solvent, temperature }: Recipe, u: number): number {
  if (u === 0) return 0;
  const t = celsiusFromKelvin(temperature);
  const [up, down] = [Math.min(u, 40 - t), Math.max(-u, (t < -10 ? -20 : -10) - t)];
  const at = (by: number): number => densityOfSolvent(solvent, kelvin(temperature + by)).value;
  return slope(at(up), at(down), up - down);
}

/** Over ± one standard uncertainty of the label, which is carried to mass by the slope of the one in the other. */
function slopesInStrength({ solvent, temperature }: Recipe, u: number) {
  const label = u === 0 ? undefined : labelledStrength(solvent);
  if (label === undefined) return { perStrengthAt20C: 0, perStrengthAtT: 0 };
  const [weaker, stronger] = label.around(u);
  const at = (t: Recipe["temperature"]): number =>
    slope(
      densityOfSolvent(stronger.composition, t).value,
      densityOfSolvent(weaker.composition, t).value,
      stronger.volumeFraction - weaker.volumeFraction,
    );
  const perStrengthAt20C = at(strengthAt20C);
  return {
    perStrengthAt20C,
    perStrengthAtT: temperature === strengthAt20C ? perStrengthAt20C : at(temperature),
  };
}

/**
 * A solvent's density and its slopes, each worked out once for all that is made of them.
 *
 * Valid:    the density's range
 * Source:   as `densityOfSolvent`; slopes by central difference, JCGM 100:2008, 5.1.3, note 2
 */
export function solventSlopes(recipe: Recipe, instruments: Instruments): SolventSlopes {
  const there = densityOfSolvent(recipe.solvent, recipe.temperature);
  const isAt20C = recipe.temperature === strengthAt20C;
  return {
    at20C: isAt20C ? there.value : densityOfSolvent(recipe.solvent, strengthAt20C).value,
    atT: there.value,
    uncertainty: there.standardUncertainty,
    perKelvin: slopeInTemperature(recipe, instruments.temperatureC),
    ...slopesInStrength(recipe, instruments.strengthVolumeFraction),
  };
}
