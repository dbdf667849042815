/** Cubic feet of vapour from a US pint of a liquid of specific gravity 1 and molar mass 1, at 70 °F and one atmosphere. */
const cubicFeetOfVapour = 403;
const zeroFahrenheitInRankine = 460;

export const cubicMetresPerCubicFoot = 0.3048 ** 3;

export interface Evaporating {
  readonly specificGravity: number;
  /** g/mol. */
  readonly molarMass: number;
  readonly pintPerMinute: number;
}

/**
 * Fresh air that holds a vapour at a limit, by the printed formula in its own units.
 *
 *     Q = 403·SG·ER·K·10⁶ / (MW·C)
 *
 * @param liquid        specific gravity, molar mass [g/mol], evaporation rate ER [US pint/min]
 * @param limitPpm      C, parts per million of the air, scalar
 * @param mixingFactor  K, 1 (well mixed) to 10, scalar
 * @returns             Q [cubic feet/min at 70 °F], scalar
 *
 * Valid:    steady evaporation into air of about 70 °F and one atmosphere
 * Accuracy: the printed constant 403 is 402.96; K is a judgement and may be off by a factor of 2
 * Source:   industrial ventilation manual, dilution for health; the formula as printed in a public equation list
 * @example
 * dilutionForHealth({ specificGravity: 1.32, molarMass: 133.4, pintPerMinute: 0.025 }, 350, 5) // => 1424.
 */
export const dilutionForHealth = (liquid: Evaporating, limitPpm: number, mixingFactor: number): number =>
  (cubicFeetOfVapour * liquid.specificGravity * liquid.pintPerMinute * mixingFactor * 1e6) /
  (liquid.molarMass * limitPpm);

/**
 * Fresh air that holds a vapour at a part of its lower flammable limit, by the printed formula in its own units.
 *
 *     Q = 403·SG·100·ER·Sf / (MW·LEL·B),   at another temperature: Q·(tF + 460)/530
 *
 * @param liquid        specific gravity, molar mass [g/mol], evaporation rate ER [US pint/min]
 * @param lelPercent    lower flammable limit, percent of the air, scalar
 * @param safetyFactor  Sf: 4 for a quarter of the limit, scalar
 * @param hotFactor     B: 1 below 250 °F, 0.7 above, scalar
 * @param fahrenheit    temperature of the air tF, scalar
 * @returns             Q [cubic feet/min at that temperature], scalar
 *
 * Valid:    steady evaporation
 * Accuracy: as `dilutionForHealth`
 * Source:   industrial ventilation manual, dilution for fire; from memory
 * @example
 * dilutionForFire({ specificGravity: 0.88, molarMass: 106, pintPerMinute: 2 / 60 }, 1, 10, 0.7, 70) // => 159.3
 */
export const dilutionForFire = (
  liquid: Evaporating,
  lelPercent: number,
  safetyFactor: number,
  hotFactor: number,
  fahrenheit: number,
): number =>
  ((cubicFeetOfVapour * liquid.specificGravity * 100 * liquid.pintPerMinute * safetyFactor) /
    (liquid.molarMass * lelPercent * hotFactor)) *
  ((fahrenheit + zeroFahrenheitInRankine) / (70 + zeroFahrenheitInRankine));
