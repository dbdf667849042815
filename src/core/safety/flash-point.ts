import { lnActivity } from "../evaporation/activity.ts";
import type { MolarLiquid } from "../evaporation/vapour-liquid.ts";
import { vapourPressure } from "../evaporation/vapour-pressure.ts";
import { findRoot } from "../solution/find-root.ts";
import { celsius, type Kelvin, kelvin, kelvinFromCelsius } from "../units.ts";
import { hazardsOf } from "./hazards.ts";

/** Where it is looked for: colder than any liquid of the table flashes, to where activity coefficients end. */
export const validFlashPoint = {
  min: kelvinFromCelsius(celsius(-30)),
  max: kelvinFromCelsius(celsius(100)),
} as const;

/**
 * Flash point of a mixture: where the vapours together are as much of a flammable mixture as each is by itself at its
 * own flash point.
 *
 *     Σ xi·γi·psati(T)/psati(Tf,i) = 1, over the components that burn
 *
 * @param liquid  components with mole fractions that sum to one
 * @returns       flash point [K], or undefined where there is none up to 100 °C
 *
 * Valid:    −30–100 °C; Tf,i the lower of two published closed-cup values
 * Accuracy: 4 K against a printed list of ethanol with water; a measurement may differ by as much
 * Source:   H.-J. Liaw, Y.-Y. Chiu, J. Hazard. Mater. A101 (2003) 83, after Le Chatelier; activity as `activityModel`
 * @example
 * celsiusFromKelvin(flashPoint({ components: ["ethanol"], moleFractions: [1] }) ?? kelvin(0)) // => 12.0
 */
export function flashPoint(liquid: MolarLiquid): Kelvin | undefined {
  const burning = liquid.components.map((component) => {
    const hazards = hazardsOf(component);
    return hazards && vapourPressure(component, kelvinFromCelsius(hazards.flashPoint));
  });
  const excess = (t: number): number => {
    const gammas = lnActivity(liquid.components, liquid.moleFractions, t);
    const sum = liquid.components.reduce((total, component, i) => {
      const atFlash = burning[i];
      if (atFlash === undefined) return total;
      const activity = (liquid.moleFractions[i] ?? 0) * Math.exp(gammas[i] ?? 0);
      return total + (activity * vapourPressure(component, kelvin(t))) / atFlash;
    }, 0);
    return Math.log(sum);
  };
  const { min, max } = validFlashPoint;
  return excess(max) < 0 || burning.every((p) => p === undefined)
    ? undefined
    : kelvin(findRoot(excess, min, max));
}
