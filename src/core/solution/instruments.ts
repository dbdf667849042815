/** Standard uncertainties of what was measured with, in the units that people know them in. */
export interface Instruments {
  readonly scaleG: number;
  readonly jugMl: number;
  readonly temperatureC: number;
  /** Of the alcohol, in volume fraction at 20 °C. */
  readonly strengthVolumeFraction: number;
  readonly moistureMassFraction: number;
  readonly partialDensityKgM3: number;
}

/** What an uncertainty of a cut can come from: an instrument's field, or the density table itself. */
export type UncertaintySource = keyof Instruments | "solventDensityKgM3";

/**
 * Assumed, and said so, when nothing is told: a kitchen scale that shows grams, a jug marked every 25 mL, a shop
 * thermometer, a label's strength, flakes with up to 2 % moisture, and the spread of published densities of lac
 * (1140–1210 kg/m³, rectangular). Common practice, editable wherever they are used.
 */
export const kitchenInstruments: Instruments = {
  scaleG: 0.5,
  jugMl: 5,
  temperatureC: 2,
  strengthVolumeFraction: 0.005,
  moistureMassFraction: 0.006,
  partialDensityKgM3: 20,
};
