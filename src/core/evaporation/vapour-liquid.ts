import { findRoot } from "../solution/find-root.ts";
import { type Kelvin, kelvin, type Pascal, pascal } from "../units.ts";
import { lnActivity } from "./activity.ts";
import { boilingPressure, validVapourTemperature, vapourPressure } from "./vapour-pressure.ts";
import { propertiesOf, type Volatile } from "./volatiles.ts";

/** A liquid by mole fractions, in the order of its components. */
export interface MolarLiquid {
  readonly components: readonly Volatile[];
  readonly moleFractions: readonly number[];
}

export interface VapourAbove {
  /** Of the vapours together. */
  readonly pressure: Pascal;
  /** Share of each in the vapour, in the order of the components. */
  readonly vapourFractions: readonly number[];
}

type PurePressure = (component: Volatile, temperature: Kelvin) => Pascal;

function vapourBy(pure: PurePressure, liquid: MolarLiquid, temperature: Kelvin): VapourAbove {
  const gammas = lnActivity(liquid.components, liquid.moleFractions, temperature);
  const partial = liquid.components.map((c, i) => {
    const x = liquid.moleFractions[i] ?? 0;
    return x === 0 ? 0 : x * Math.exp(gammas[i] ?? 0) * pure(c, temperature);
  });
  const pressure = partial.reduce((sum, p) => sum + p, 0);
  return { pressure: pascal(pressure), vapourFractions: partial.map((p) => p / pressure) };
}

/**
 * The vapours above a liquid at room temperature.
 *
 *     p = Σ xi·γi·psati(T),   yi = xi·γi·psati/p
 *
 * @param liquid       components with mole fractions that sum to one
 * @param temperature  [K], scalar
 * @returns            total pressure [Pa] and the share of each in the vapour
 * @throws DomainError outside the range of the vapour pressures
 *
 * Valid:    0–100 °C; the vapour as an ideal gas
 * Accuracy: as `activityModel`
 * Source:   Raoult's law with activity coefficients; common practice
 * @example
 * vapourAbove({ components: ["ethanol", "water"], moleFractions: [0.50492, 0.49508] }, kelvin(303.15)).pressure // => 9685
 */
export const vapourAbove = (liquid: MolarLiquid, temperature: Kelvin): VapourAbove =>
  vapourBy(vapourPressure, liquid, temperature);

/**
 * Where a liquid boils, and what it gives off there.
 *
 *     Σ xi·γi·psati(T) = p
 *
 * @param liquid    components with mole fractions that sum to one
 * @param pressure  of the air [Pa], scalar
 * @returns         boiling point [K] and the share of each in the vapour
 * @throws DomainError where it lies outside the range of the vapour pressures
 *
 * Valid:    about 30–110 °C
 * Accuracy: alcohols with water within 0.6 K and 0.03 in the vapour at one atmosphere
 * Source:   as `vapourAbove`, pure liquids as `boilingPressure`
 * @example
 * bubblePoint({ components: ["ethanol", "water"], moleFractions: [0.5, 0.5] }, pascal(101325)).temperature // => 352.9
 */
export function bubblePoint(
  liquid: MolarLiquid,
  pressure: Pascal,
): { readonly temperature: Kelvin; readonly vapourFractions: readonly number[] } {
  const { min, max } = validVapourTemperature;
  const excess = (t: number): number =>
    Math.log(vapourBy(boilingPressure, liquid, kelvin(t)).pressure / pressure);
  const temperature = kelvin(findRoot(excess, min, max));
  return { temperature, vapourFractions: vapourBy(boilingPressure, liquid, temperature).vapourFractions };
}

export interface Azeotrope {
  readonly temperature: Kelvin;
  /** Of the first component in the liquid, and so in the vapour. */
  readonly moleFraction: number;
  readonly massFraction: number;
}

/**
 * The azeotrope of two liquids: the mixture that boils as one.
 *
 *     y1(x1, p) = x1
 *
 * @param components  two names
 * @param pressure    of the air [Pa], scalar
 * @returns           temperature [K], mole and mass fraction of the first, or undefined where there is none
 * @throws DomainError as `bubblePoint`
 *
 * Valid:    pairs with at most one azeotrope
 * Accuracy: ethanol and isopropanol with water within 1 % by mass and 0.5 K at one atmosphere
 * Source:   as `bubblePoint`
 * @example
 * azeotrope(["ethanol", "water"], pascal(101325))?.massFraction // => 0.96
 */
export function azeotrope(
  components: readonly [Volatile, Volatile],
  pressure: Pascal,
): Azeotrope | undefined {
  const at = (x: number) => bubblePoint({ components, moleFractions: [x, 1 - x] }, pressure);
  const richer = (x: number): number => (at(x).vapourFractions[0] ?? 0) - x;
  const [few, most] = [1e-4, 1 - 1e-4];
  if (richer(few) * richer(most) >= 0) return undefined;
  const x = findRoot(richer, few, most);
  const [m1, m2] = [propertiesOf(components[0]).molarMass, propertiesOf(components[1]).molarMass];
  return {
    temperature: at(x).temperature,
    moleFraction: x,
    massFraction: (x * m1) / (x * m1 + (1 - x) * m2),
  };
}
