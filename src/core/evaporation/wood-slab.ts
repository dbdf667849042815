import { inRange } from "../domain-error.ts";
import type { Kelvin, KilogramPerCubicMetre, MassFraction, Metre } from "../units.ts";

export const validWoodDensity = { min: 200, max: 1200 } as const;

export interface WoodHeat {
  /** W/(m·K). */
  readonly conductivity: number;
  /** J/(kg·K), of the wood with its moisture. */
  readonly heatCapacity: number;
}

/**
 * How wood takes up and passes on heat, across the grain.
 *
 *     k = G·(0.1941 + 0.4064·M) + 0.01864,   G = ρ/(1000·(1 + M))
 *     c = (c0 + 4.19·M)/(1 + M) + 100·M·(−0.06191 + 2.36e-4·T − 0.0133·M),   c0 = 0.1031 + 0.003867·T
 *
 * @param density      ρ of the wood as it is [kg/m³], scalar
 * @param moisture     M, mass of water to a mass of dry wood, scalar
 * @param temperature  T [K], scalar
 * @returns            conductivity k [W/(m·K)] and heat capacity c [J/(kg·K)]
 * @throws DomainError outside `validWoodDensity`, and for NaN
 *
 * Valid:    200–1200 kg/m³, below fibre saturation, 7–97 °C
 * Accuracy: conductivity 20 %, by the piece
 * Source:   USDA Wood Handbook (FPL-GTR-282), ch. 4, eqs. 4-15 to 4-17; from memory
 * @example
 * woodHeat(kilogramPerCubicMetre(600), massFraction(0.1), kelvin(293.15)).conductivity // => 0.1467
 */
export function woodHeat(
  density: KilogramPerCubicMetre,
  moisture: MassFraction,
  temperature: Kelvin,
): WoodHeat {
  const gravity = inRange("densityKgM3", density, validWoodDensity) / (1000 * (1 + moisture));
  const dry = 0.1031 + 0.003867 * temperature;
  const bound = 100 * moisture * (-0.06191 + 2.36e-4 * temperature - 0.0133 * moisture);
  return {
    conductivity: gravity * (0.1941 + 0.4064 * moisture) + 0.01864,
    heatCapacity: 1e3 * ((dry + 4.19 * moisture) / (1 + moisture) + bound),
  };
}

/** A board cut into layers, thin where the film is and thick below. Heat does not leave at its back. */
export interface Slab {
  /** J/(m²·K) of each layer, from the top. */
  readonly capacities: Float64Array;
  /** W/(m²·K): from the film into the first layer, and from each layer to the next. */
  readonly conductances: Float64Array;
}

const layers = 10;
const growth = 1.6;

/**
 * Cuts a board into layers for the conduction of heat.
 *
 *     Δx grows by 1.6 from layer to layer; conductance between the middles of two: k/((Δx1 + Δx2)/2)
 *
 * @param thickness  [m], scalar
 * @param density    [kg/m³], scalar
 * @param heat       conductivity and heat capacity
 * @returns          capacities [10] and conductances [10] by area
 *
 * Valid:    a board that is warmed or cooled through its face alone
 * Accuracy: the face of a thick board under a steady flow, within 3 % of the analytic solution after 20 s, 2 % after a minute
 * Source:   finite volumes; common practice
 * @example
 * slabOf(metre(0.02), kilogramPerCubicMetre(600), { conductivity: 0.15, heatCapacity: 1600 }).capacities.reduce((a, b) => a + b) // => 19200
 */
export function slabOf(thickness: Metre, density: KilogramPerCubicMetre, heat: WoodHeat): Slab {
  const first = (thickness * (growth - 1)) / (growth ** layers - 1);
  const sizes = Array.from({ length: layers }, (_, i) => first * growth ** i);
  return {
    capacities: Float64Array.from(sizes, (dx) => dx * density * heat.heatCapacity),
    conductances: Float64Array.from(
      sizes,
      (dx, i) => heat.conductivity / ((dx + (i === 0 ? 0 : (sizes[i - 1] as number))) / 2),
    ),
  };
}
