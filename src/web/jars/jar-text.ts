import type { Fitness } from "../../core/jar/fitness.ts";
import { formatFraction } from "../../core/quantity/format-quantity.ts";
import { type Cut, poundsPerUsGallonFromCut } from "../../core/units.ts";
import type { JarView } from "../../core/views/jar.ts";
import { known, withDigits } from "../words/number.ts";
import * as words from "../words/words.ts";

/** Two standard uncertainties: about 95 in 100 lie within. Said as "give or take" wherever a jar says it. */
export const giveOrTake = (standardUncertainty: number): number => 2 * standardUncertainty;

/** `1½` where a shop's fraction is meant, else so many figures. */
export const poundsText = (cut: Cut): string => {
  const pounds = poundsPerUsGallonFromCut(cut);
  return formatFraction(pounds) ?? withDigits(pounds, 2);
};

/** `1.58` with `0.05`: as exactly as it is known. */
export const cutKnown = (cut: { readonly value: Cut; readonly standardUncertainty: number }) =>
  known(
    poundsPerUsGallonFromCut(cut.value),
    giveOrTake((poundsPerUsGallonFromCut(cut.value) * cut.standardUncertainty) / cut.value),
  );

export const millilitres = (m3: number): string => `${Math.round(m3 * 1e6)} mL`;
export const grams = (kg: number): string => {
  const g = kg * 1e3;
  return `${g < 10 ? withDigits(g, 2) : Math.round(g)} g`;
};

/** What a jar's shelf label says of its cut: what was aimed at for a working jar, what it is for the others. */
export function cutOnShelf(jar: JarView): string {
  if (jar.stage === "thinned" && jar.labelCut !== null) return words.jars.lb(poundsText(jar.labelCut));
  return jar.cut === null ? "" : words.jars.lb(withDigits(poundsPerUsGallonFromCut(jar.cut.value), 2));
}

/** One or two words for the shelf: what stops it, else how it looks. */
export function stateOnShelf(jar: JarView, fitness: Fitness): string {
  if (jar.emptied !== null) return words.jars.emptied;
  if (!jar.known) return words.jars.notKnown;
  if (fitness.state !== "use") return words.jars.state[fitness.state];
  const look = jar.looks.looks.at(-1);
  const clarity = look?.clarity ?? null;
  return [jar.wax === "settled" ? words.jars.wax : "", clarity === null ? "" : words.jars.clarity[clarity]]
    .filter((part) => part !== "")
    .join(", ");
}

/** `Dewaxed lemon flakes in Ethanol 96 %` */
export const inWords = (jar: JarView): string =>
  words.jars.inSolvent(
    jar.resins.map((one) => one.name).join(" and "),
    jar.solvents.map((s) => s.name).join(", "),
  );

/** Everything that the drawing says, for who cannot see it. */
export const readOut = (jar: JarView, fitness: Fitness): string =>
  [
    `${jar.code}: ${inWords(jar)}`,
    cutOnShelf(jar),
    jar.known && jar.emptied === null ? millilitres(jar.volume.value) : "",
    stateOnShelf(jar, fitness),
  ]
    .filter((part) => part !== "")
    .join(", ");
