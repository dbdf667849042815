import { solventOf } from "../../core/registry/solvent-of.ts";
import { poundsPerUsGallonFromCut } from "../../core/units.ts";
import type { JarView } from "../../core/views/jar.ts";

/** A jar's cut, how sure it is, and its liquid, as the calculations take them; its amount is another matter. */
export function asStock(jar: JarView) {
  const pounds = jar.cut === null ? 0 : poundsPerUsGallonFromCut(jar.cut.value);
  return {
    cutLbPerGal: pounds,
    cutStandardUncertainty: jar.cut === null ? 0 : (pounds * jar.cut.standardUncertainty) / jar.cut.value,
    solvent: solventOf(jar.composition),
  };
}
