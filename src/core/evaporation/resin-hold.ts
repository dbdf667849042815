import { gasConstant } from "./air-side.ts";
import type { Volatile } from "./volatiles.ts";

/** What is assumed of the resin with each liquid. No published set for lac was found: the numbers are fitted to practice. */
export interface ResinWith {
  /** How unwilling they are to mix: below 0.5 any amount dissolves, at 2 the resin takes up a few percent. */
  readonly interaction: number;
  /** Glass temperature of the liquid itself, K; from memory. */
  readonly glass: number;
}

const withResin: Readonly<Record<Volatile, ResinWith>> = {
  ethanol: { interaction: 0.4, glass: 97 },
  methanol: { interaction: 0.4, glass: 103 },
  isopropanol: { interaction: 0.5, glass: 117 },
  "n-propanol": { interaction: 0.45, glass: 98 },
  "n-butanol": { interaction: 0.5, glass: 112 },
  isobutanol: { interaction: 0.55, glass: 113 },
  acetone: { interaction: 0.8, glass: 100 },
  mek: { interaction: 0.9, glass: 100 },
  mibk: { interaction: 1.2, glass: 100 },
  "ethyl-acetate": { interaction: 1.2, glass: 115 },
  "n-butyl-acetate": { interaction: 1.4, glass: 115 },
  "n-heptane": { interaction: 3, glass: 90 },
  water: { interaction: 2, glass: 136 },
};

/** Dry lac: 35–50 °C is printed, from memory. */
const glassOfResin = 318;
/** m³/mol: about 1000 g/mol. */
const molarVolumeOfResin = 8.3e-4;

/** In thin liquid; in ethanol at 20 °C, m²/s. */
const freeDiffusivity = 1e-9;
/** Powers of ten by which the dry resin slows ethanol. Fitted to practice: a brushed coat can be coated again after 1–3 h. */
const slowing = 7;
const ethanolMolarVolume = 5.84e-5;
/** J/mol; fitted to practice: a shop at 10 °C waits twice as long as one at 20 °C. */
const activation = 6e4;

/** A film by volumes, as every liquid in it feels the resin. */
export interface FilmMixture {
  /** φr, volume fraction of the resin. */
  readonly resin: number;
  /** 1/v̄: moles of liquid in a volume of the liquids, mol/m³. */
  readonly molesPerVolume: number;
  /** Σ χj·nj over the volume of the film, mol/m³. */
  readonly interactions: number;
}

/**
 * χ of one liquid with the resin: what a mole of it adds to the sum of `interactions`.
 *
 * Valid:    an estimate throughout
 * Source:   fitted to practice
 */
export const interactionOf = (component: Volatile): number => withResin[component].interaction;

/**
 * How much the resin lowers or raises the activity of one liquid above what it is in the liquids alone.
 *
 *     ln F = ln(1 − φr) + φr·vi·(1/v̄ − 1/vr) + φr·(χi − vi·Σ χj·nj/V)
 *
 * Each liquid has its own χ, and the sum lets them feel each other through the resin: where it is unwilling to take up
 * water, it keeps the alcohol that makes it willing. With one χ for all, every film would set as pure water.
 *
 * @param interaction  χi of the liquid, as `interactionOf`, scalar
 * @param molarVolume  vi [m³/mol], scalar
 * @param film         volume fraction of the resin, and the two sums over the liquids
 * @returns            F, scalar; 1 without resin
 *
 * Valid:    an estimate throughout
 * Accuracy: not known; χ is fitted to practice (water: 3–4 % by mass at 75 % relative humidity)
 * Source:   P. J. Flory, J. Chem. Phys. 10 (1942) 51; M. L. Huggins, J. Chem. Phys. 9 (1941) 440, for several liquids
 * @example
 * resinFactor(interactionOf("water"), 1.8e-5, { resin: 0.958, molesPerVolume: 1 / 1.8e-5, interactions: (2 * 0.042) / 1.8e-5 }) // => 0.67
 */
export function resinFactor(interaction: number, molarVolume: number, film: FilmMixture): number {
  const size = molarVolume * (film.molesPerVolume - 1 / molarVolumeOfResin);
  const mixing = interaction - molarVolume * film.interactions;
  return (1 - film.resin) * Math.exp(film.resin * (size + mixing));
}

/**
 * How fast a liquid finds its way through the film.
 *
 *     log10 D = −9 − 7·√(vi/vethanol)·φr³ − (E/R·ln 10)·(1/T − 1/293.15)
 *
 * @param molarVolume  vi [m³/mol], scalar
 * @param resin        φr, volume fraction of resin, scalar
 * @param temperature  T [K], scalar
 * @returns            D [m²/s], scalar
 *
 * Valid:    an estimate throughout
 * Accuracy: an order of magnitude
 * Source:   fitted to practice: a brushed coat takes another after 1–3 h at 21 °C, a padded one after a quarter of an hour
 * @example
 * diffusivityInFilm(5.84e-5, 0, 293.15) // => 1e-9
 */
export function diffusivityInFilm(molarVolume: number, resin: number, temperature: number): number {
  const decades = slowing * Math.sqrt(molarVolume / ethanolMolarVolume) * resin ** 3;
  const cold = (activation / gasConstant) * (1 / temperature - 1 / 293.15);
  return freeDiffusivity * Math.exp(-Math.LN10 * decades - cold);
}

/**
 * The temperature at which a film turns to glass.
 *
 *     1/Tg = Σ wi/Tgi
 *
 * @param resin    mass of resin to an area [kg/m²], scalar
 * @param liquids  masses of the liquids in it [kg/m²], by name
 * @returns        Tg [K], scalar
 *
 * Valid:    an estimate; at least some resin
 * Accuracy: 10 K
 * Source:   T. G. Fox, Bull. Am. Phys. Soc. 1 (1956) 123; glass temperatures from memory
 * @example
 * glassTemperature(1, []) // => 318
 */
export function glassTemperature(
  resin: number,
  liquids: readonly (readonly [component: Volatile, mass: number])[],
): number {
  let [mass, sum] = [resin, resin / glassOfResin];
  for (const [component, m] of liquids) {
    mass += m;
    sum += m / withResin[component].glass;
  }
  return mass / sum;
}

const [wlfSlope, wlfOffset, glassyDecades] = [17.44, 51.6, 12];

/**
 * How far above its glass temperature a film has a viscosity.
 *
 *     log10 η = 12 − 17.44·(T − Tg)/(51.6 + T − Tg)
 *
 * @param decades  log10 of the viscosity in Pa·s, scalar
 * @returns        T − Tg [K], scalar
 *
 * Valid:    0–12 decades
 * Accuracy: of the resins that the constants are the mean of, a factor of 10
 * Source:   M. L. Williams, R. F. Landel, J. D. Ferry, J. Am. Chem. Soc. 77 (1955) 3701
 * @example
 * kelvinAboveGlass(3) // => 55.0
 */
export function kelvinAboveGlass(decades: number): number {
  const fall = glassyDecades - decades;
  return (fall * wlfOffset) / (wlfSlope - fall);
}

/** Dry to a light touch, and too stiff to flow under a brush or a pad: 10³ and 10⁷ Pa·s, common practice of coatings. */
export const touchDryDecades = 3;
export const recoatDecades = 7;
