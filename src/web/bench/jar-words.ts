import { formatFraction } from "../../core/quantity/format-quantity.ts";
import { poundsPerUsGallonFromCut } from "../../core/units.ts";
import type { DueCoat } from "../../core/views/bench.ts";
import type { JarView } from "../../core/views/jar.ts";
import { withDigits } from "../words/number.ts";
import * as words from "../words/words.ts";

/** `Lemon flakes 1½ lb in ethanol 96 %`: what is in a jar, by its label where it has one. */
export function jarInWords(jar: JarView): string {
  const cut = jar.labelCut ?? jar.cut?.value;
  const pounds = cut === undefined ? undefined : poundsPerUsGallonFromCut(cut);
  const said = pounds === undefined ? "" : words.bench.cutLb(formatFraction(pounds) ?? withDigits(pounds, 2));
  const solvents = jar.solvents.map((solvent) => solvent.name).join(words.bench.and);
  return words.bench.jarSays(jar.resins[0]?.name ?? "", said, solvents);
}

/** The same with the jar's own name first, where several jars hold alike. */
export const namedCoatOf = (coat: DueCoat, jar: JarView | null): string =>
  jar === null ? coatOf(coat, jar) : words.bench.jarNamed(jar.code, jarInWords(jar));

/** What a coat is of, as far as it is known here: the jar, the recipe of the plan, or nothing. */
export function coatOf(coat: DueCoat, jar: JarView | null): string {
  if (jar !== null) return jarInWords(jar);
  return coat.jar === null ? "" : Object.values(coat.jar.recipe).join(", ");
}
