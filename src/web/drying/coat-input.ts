import { methodDefaults } from "../../core/pieces/method-defaults.ts";
import type { Component } from "../../core/solution/component.ts";
import { celsiusFromKelvin, kelvin, poundsPerUsGallonFromCut } from "../../core/units.ts";
import type { JarView } from "../../core/views/jar.ts";
import type { CoatMethod } from "../../core/views/waits.ts";
import type { DryingInput } from "./task.ts";

/** A shop's air and its wood, in kelvin and as a share, as they were typed or read. */
export interface ShopAir {
  readonly temperature: number;
  readonly relativeHumidity: number;
  readonly wood: number;
}

/** How thick a coat lies wet, µm: what a plan reckons with. Wiping is thin as padding is, dipping thick as brushing. */
export const usualWetUm: Readonly<Record<CoatMethod, number>> = {
  pad: methodDefaults.pad.litresPerM2 * 1000,
  brush: methodDefaults.brush.litresPerM2 * 1000,
  spray: methodDefaults.spray.litresPerM2 * 1000,
  wipe: methodDefaults.pad.litresPerM2 * 1000,
  dip: methodDefaults.brush.litresPerM2 * 1000,
};

/** Steps of what a thermometer shows: so that a reading that went to kelvin and back is the same question again. */
const celsius = (k: number): number => Number(celsiusFromKelvin(kelvin(k)).toFixed(3));

/** A jar whose coat can be reckoned: what is in it is known, and there is resin among it. */
export const canBeReckoned = (jar: JarView): boolean =>
  jar.known && jar.emptied === null && jar.cut !== null && Object.keys(jar.composition).length > 0;

/** A coat of a jar in the shop's air, as the calculation takes it; nothing where the jar's contents are not known. */
export function coatInput(
  jar: JarView,
  air: ShopAir,
  method: CoatMethod,
  beneathUm = 0,
): DryingInput | undefined {
  if (!canBeReckoned(jar) || jar.cut === null) return undefined;
  const shares = Object.entries(jar.composition) as [Component, number][]; // what a composition is made of
  const parts = shares.map(([alcohol, massShare]) => ({ alcohol, massShare }));
  return {
    film: {
      wetUm: usualWetUm[method],
      cutLbPerGal: poundsPerUsGallonFromCut(jar.cut.value),
      solvent: { parts },
      beneathUm,
    },
    air: { temperatureC: celsius(air.temperature), relativeHumidity: air.relativeHumidity },
    wood: { temperatureC: celsius(air.wood) },
  };
}
