import { volumeSolids } from "../../core/film/film.ts";
import { methodDefaults } from "../../core/pieces/method-defaults.ts";
import { cutFromPoundsPerUsGallon } from "../../core/units.ts";
import type { VapourWork } from "../vapour/vapour-card.tsx";
import type { PlanInput } from "./draft.ts";

/** One coat on the whole piece: the alcohol of its liquid, over the minutes that the hands take. */
export function vapourWork(input: PlanInput, areaM2: number): VapourWork {
  const usual = methodDefaults[input.method];
  const perM2 = input.millilitresPerM2PerCoat ?? usual.litresPerM2 * 1e3;
  const solids = volumeSolids(cutFromPoundsPerUsGallon(input.cutLbPerGal));
  return {
    solvent: input.solvent,
    solventMl: areaM2 * perM2 * (1 - solids),
    minutes: Math.max(1, areaM2 * usual.minutesPerM2),
  };
}
