import { DomainError } from "../domain-error.ts";
import { type Metre, metre, type VolumeFraction, volumeFraction } from "../units.ts";
import { contrastRatio } from "./contrast.ts";
import { linearInGamut, oklchFromLinear } from "./oklab.ts";
import { type Absorption, cardBehindJar, jarPath } from "./resin-grades.ts";
import {
  hexFromSrgb,
  type LinearRgb,
  linearFromSrgb,
  type Srgb,
  srgb,
  srgbFromHex,
  srgbFromLinear,
} from "./srgb.ts";

/** The least contrast of text and of what must be told apart. Source: WCAG 2.2, success criterion 1.4.3 (AA). */
export const leastContrast = 4.5;

/** The ink of the day page: what is written on a finish is written in it where it can be read. */
export const ink: Srgb = srgbFromHex("#17212B");
const white: Srgb = srgb(1, 1, 1);
const resinAlone = volumeFraction(1);

/** A finish to be drawn: what absorbs, and how much of it there is. */
export interface Finish {
  readonly absorption: Absorption;
  /** Resin, as a fraction of the liquid's volume. */
  readonly solids: VolumeFraction;
}

/**
 * The part of the light that goes through a finish, by channel.
 *
 *     T = exp(−k·φ·d)
 *
 * @param finish  absorption k [1/m] and volume solids φ [m³/m³]
 * @param path    d, the way through it [m], scalar
 * @returns       red, green, blue, each 0–1
 *
 * Valid:    clear liquids and films; a hazy one scatters, which is not in it
 * Accuracy: a drawing: three channels stand for a spectrum
 * Source:   Beer–Lambert law
 * @example
 * transmittance({ absorption: { red: 0, green: 10, blue: 20 }, solids: volumeFraction(0.1) }, metre(0.1)) // => [1, 0.905, 0.819]
 */
export function transmittance({ absorption, solids }: Finish, path: Metre): LinearRgb {
  const through = (k: number) => Math.exp(-k * solids * path);
  return [through(absorption.red), through(absorption.green), through(absorption.blue)];
}

const behind = (backdrop: Srgb, [r, g, b]: LinearRgb): LinearRgb => {
  const light = linearFromSrgb(backdrop);
  return [light[0] * r, light[1] * g, light[2] * b];
};

/**
 * The colour of a jar of a finish before a white card: the accent of the page.
 *
 *     card·exp(−k·φ·d), d = 70 mm of jar unless told
 *
 * @param finish  absorption [1/m] and volume solids [m³/m³]
 * @param path    way through the liquid [m], scalar
 * @returns       screen colour
 *
 * Valid:    as `transmittance`
 * Accuracy: a drawing
 * Source:   Beer–Lambert law; the card is our own convention
 * @example
 * finishColour({ absorption: { red: 0, green: 0, blue: 0 }, solids: volumeFraction(0.1) }).red // => 0.973
 */
export const finishColour = (finish: Finish, path: Metre = metre(jarPath)): Srgb =>
  srgbFromLinear(behind(cardBehindJar, transmittance(finish, path)));

/** The page's grounds that text may stand on, and which way the text must move to be read on them. */
export interface Ground {
  readonly grounds: readonly Srgb[];
  readonly text: "darker" | "lighter";
}

/**
 * The finish as text, line or focus ring: as much of its hue as can be read.
 *
 *     on light grounds: three jars of it, then lower lightness in OKLCH to 4.5:1 on the worst ground
 *     on dark grounds: one jar of it, then raised likewise
 *
 * @param finish  absorption [1/m] and volume solids [m³/m³]
 * @param ground  the grounds it may stand on, n ≥ 1
 * @returns       screen colour with a contrast of 4.5 or more on each ground
 * @throws DomainError when not even black (or white) can be read on all the grounds
 *
 * Valid:    grounds all light, or all dark
 * Accuracy: lightness to 1e-4
 * Source:   contrast WCAG 2.2, 1.4.3; the three jars are our own convention
 */
export function finishInk(finish: Finish, ground: Ground): Srgb {
  const darker = ground.text === "darker";
  const start = linearFromSrgb(finishColour(finish, metre(jarPath * (darker ? 3 : 1))));
  const reads = (colour: Srgb) => ground.grounds.every((g) => contrastRatio(colour, g) >= leastContrast);
  const first = srgbFromLinear(start);
  if (reads(first)) return first;
  const { chroma, hue, lightness } = oklchFromLinear(start);
  const at = (l: number) => srgbFromLinear(linearInGamut({ lightness: l, chroma, hue }));
  let [unread, read] = [lightness, darker ? 0 : 1];
  if (!reads(at(read)))
    throw new DomainError({
      code: "contradiction",
      field: "grounds",
      value: ground.grounds.map(hexFromSrgb),
    });
  while (Math.abs(read - unread) > 1e-4) {
    const middle = (unread + read) / 2;
    if (reads(at(middle))) read = middle;
    else unread = middle;
  }
  return at(read);
}

/**
 * A fill in the colour of a finish that can be written on, and what to write with.
 *
 * Ink where it reads at 4.5:1, else white, else a shorter way through the jar until ink reads.
 *
 * @param finish  absorption [1/m] and volume solids [m³/m³]
 * @returns       fill and text, with a contrast of 4.5 or more
 */
export function finishToWriteOn(finish: Finish): { readonly fill: Srgb; readonly text: Srgb } {
  const fill = finishColour(finish);
  if (contrastRatio(fill, ink) >= leastContrast) return { fill, text: ink };
  if (contrastRatio(fill, white) >= leastContrast) return { fill, text: white };
  let [reads, tooDark] = [0, jarPath];
  while (tooDark - reads > 1e-5) {
    const middle = (reads + tooDark) / 2;
    if (contrastRatio(finishColour(finish, metre(middle)), ink) >= leastContrast) reads = middle;
    else tooDark = middle;
  }
  return { fill: finishColour(finish, metre(reads)), text: ink };
}

/**
 * Bare wood under a film: the wood's light through the film twice, in and out.
 *
 *     wood·exp(−k·2d), the dry film being resin alone (φ = 1)
 *
 * @param wood        the wood's own colour
 * @param absorption  of the resin [1/m]
 * @param film        dry thickness d [m], scalar
 * @returns           screen colour
 *
 * Valid:    clear films; how a finish wets wood and deepens it is not in it
 * Accuracy: a drawing
 * Source:   Beer–Lambert law
 * @example
 * hexFromSrgb(woodUnderFilm(srgbFromHex("#B98A62"), { red: 0, green: 0, blue: 0 }, metre(1e-4))) // => "#B98A62"
 */
export const woodUnderFilm = (wood: Srgb, absorption: Absorption, film: Metre): Srgb =>
  srgbFromLinear(behind(wood, transmittance({ absorption, solids: resinAlone }, metre(2 * film))));
