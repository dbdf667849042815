import { waterSaturationPressure } from "../air/saturation-pressure.ts";
import type { Kelvin, Pascal } from "../units.ts";
import { propertiesOf, type Volatile } from "./volatiles.ts";

export const gasConstant = 8.314462618;
const airMolarMass = 0.0289652; // kg/mol
const airHeatCapacity = 1006; // J/(kg·K)
const prandtl = 0.71;
const gravity = 9.80665;

/** The air of a room is never quite at rest: differences of a third of a degree keep it moving. */
const leastDensityDifference = 1e-3;

export const validSpeed = { min: 0, max: 5 } as const;
/** Of the two correlations: Reynolds number of the plate; Rayleigh number of still air over it. */
export const reynoldsRange = { min: 10, max: 1e7 } as const;
export const rayleighRange = { min: 1e4, max: 1e9 } as const;

export interface AirFlow {
  readonly temperature: Kelvin;
  readonly pressure: Pascal;
  /** m/s, along the surface. */
  readonly speed: number;
  /** Of the surface along the flow, m. */
  readonly length: number;
}

interface AirProperties {
  readonly kinematicViscosity: number;
  readonly conductivity: number;
}

/** Sutherland's viscosity and the conductivity of the U.S. Standard Atmosphere (1976). */
function propertiesOfAir(t: number, pressure: number): AirProperties {
  const density = (pressure * airMolarMass) / (gasConstant * t);
  return {
    kinematicViscosity: (1.458e-6 * t ** 1.5) / (t + 110.4) / density,
    conductivity: (2.64638e-3 * t ** 1.5) / (t + 245.4 * 10 ** (-12 / t)),
  };
}

export interface AirSide {
  /** W/(m²·K), from the density of the gas at the surface over that of the room's air. */
  readonly heatTransfer: (densityRatio: number) => number;
  readonly reynolds: number;
  readonly rayleigh: (densityRatio: number) => number;
}

const forced = (re: number): number => {
  if (re === 0) return 0;
  const laminar = 0.664 * Math.sqrt(re) * Math.cbrt(prandtl);
  const turbulent = (0.037 * re ** 0.8 * prandtl) / (1 + 2.443 * re ** -0.1 * (prandtl ** (2 / 3) - 1));
  return Math.hypot(laminar, turbulent);
};

/**
 * Heat transfer between air and a flat surface that faces up, in a draught and in still air.
 *
 *     draught: Nu = √(Nulam² + Nuturb²),  Nulam = 0.664·√Re·∛Pr,  Nuturb = 0.037·Re^0.8·Pr/(1 + 2.443·Re^−0.1·(Pr^⅔ − 1))
 *     still:   Nu = 0.52·Ra^⅕ on a quarter of the length, for gas that is heavier than the room's air
 *     both:    h³ = hdraught³ + hstill³
 *
 * Over a drying film the gas is cold and full of vapour, so it lies on the surface: hence the correlation for a cold
 * plate that faces up.
 *
 * @param flow  air temperature [K], pressure [Pa], speed [m/s], length along it [m]
 * @returns     a function from the density ratio of the gas at the surface to h [W/(m²·K)], with Re and Ra
 *
 * Valid:    Re 10–10⁷; Ra 10⁴–10⁹
 * Accuracy: 20 % each; a shop's draughts are known less well
 * Source:   V. Gnielinski in VDI Heat Atlas, G4 (flat plate); Incropera, Fundamentals of Heat and Mass Transfer, eq. 9.32
 *           (still air), from memory; S. W. Churchill, AIChE J. 23 (1977) 10 (both)
 * @example
 * airSide({ temperature: kelvin(293.15), pressure: pascal(101325), speed: 1, length: 0.3 }).heatTransfer(1.02) // => 10.48
 */
export function airSide(flow: AirFlow): AirSide {
  const { kinematicViscosity: nu, conductivity } = propertiesOfAir(flow.temperature, flow.pressure);
  const reynolds = (flow.speed * flow.length) / nu;
  const draught = (forced(reynolds) * conductivity) / flow.length;
  const quarter = flow.length / 4;
  const rayleigh = (ratio: number): number => {
    const difference = Math.hypot(ratio - 1, leastDensityDifference);
    return (gravity * difference * quarter ** 3 * prandtl) / nu ** 2;
  };
  return {
    reynolds,
    rayleigh,
    heatTransfer: (ratio) => {
      const still = (0.52 * rayleigh(ratio) ** 0.2 * conductivity) / quarter;
      return Math.cbrt(draught ** 3 + still ** 3);
    },
  };
}

/**
 * How much better than heat, mole for mole, a vapour crosses the air: 1 for water.
 *
 *     gi = h/(cp·Mair)·(Di/Dwater)^⅔
 *
 * For water in air the ratio of heat to mass transfer is what a psychrometer measures: its coefficient, 6.53e-4·(1 +
 * 9.44e-4·t), makes it 1.00 within 1 %. Other vapours follow water by the analogy's power of the diffusivity.
 *
 * @param component  the vapour
 * @returns          (Di/Dwater)^⅔, scalar
 *
 * Valid:    dilute vapours in air
 * Accuracy: 8 %, as the diffusivity
 * Source:   T. H. Chilton, A. P. Colburn, Ind. Eng. Chem. 26 (1934) 1183; WMO-No. 8, Guide to Meteorological Instruments,
 *           annex 4.B (psychrometer), from memory
 * @example
 * vapourOverWater("ethanol") // => 0.621
 */
export const vapourOverWater = (component: Volatile): number =>
  (propertiesOf(component).diffusivity / propertiesOf("water").diffusivity) ** (2 / 3);

/** Moles of vapour that cross for each W/(m²·K) of heat transfer, were the air all vapour: 1/(cp·M), mol·K/J. */
export const moleTransferOfHeat = 1 / (airHeatCapacity * airMolarMass);

/**
 * Share of the room's air that is water vapour, by moles.
 *
 * Valid:    the range of the saturation pressure
 * Source:   as `waterSaturationPressure`, by the definition of relative humidity
 */
export const waterInAir = (temperature: Kelvin, relativeHumidity: number, pressure: Pascal): number =>
  (relativeHumidity * waterSaturationPressure(temperature)) / pressure;

/** Mean molar mass of air with vapours in it [kg/mol], from their shares and molar masses. */
export function molarMassOfGas(shares: ArrayLike<number>, molarMasses: ArrayLike<number>): number {
  let sum = airMolarMass;
  for (let i = 0; i < shares.length; i++)
    sum += (shares[i] as number) * ((molarMasses[i] as number) - airMolarMass);
  return sum;
}

/**
 * By how much the vapours carry each other away from a surface that air does not leave.
 *
 *     Θ = ln[(1 − y∞)/(1 − ys)]/(ys − y∞), with y the share of all vapours together
 *
 * @param surface  ys, scalar
 * @param outside  y∞, scalar
 * @returns        Θ, scalar; 1/(1 − y) where the two are alike
 *
 * Valid:    shares from 0 to below 1
 * Accuracy: exact for one vapour; for several, each crosses by its own diffusivity
 * Source:   W. K. Lewis, K. C. Chang, Trans. AIChE 21 (1928) 135; film theory, common practice
 * @example
 * stefanFactor(0.1, 0) // => 1.0536
 */
export function stefanFactor(surface: number, outside: number): number {
  const ratio = (surface - outside) / (1 - surface);
  return Math.abs(ratio) < 1e-9 ? 1 / (1 - surface) : Math.log1p(ratio) / (surface - outside);
}
