import { standardPressure } from "../air/moist-air.ts";
import type { DryingSetup } from "../evaporation/drying.ts";
import { validShopTemperature, validThickness } from "../evaporation/drying.ts";
import type { NotebookEntry } from "../notebook/entry.ts";
import { hasAnHour } from "../notebook/entry-time.ts";
import { epochMilliseconds } from "../notebook/instant.ts";
import type { Body } from "../notebook/kinds/all.ts";
import type { NotebookReader } from "../notebook/reader.ts";
import { usualPartialDensity } from "../solution/resin.ts";
import { kelvin, kelvinFromCelsius, kilogramPerCubicMetre, metre } from "../units.ts";
import { usualCoat, wetCoat } from "./coat-amount.ts";
import { type CoatLiquid, liquidNow, liquidsOf } from "./coat-liquid.ts";
import { filmBeneath } from "./film.ts";
import { type Place, placeKey } from "./place.ts";
import type { CoatMethod } from "./waits.ts";

/** The shop's air as it was read or typed; the wood as warm as the air where it was not. */
export interface ShopAir {
  readonly temperature: number;
  readonly relativeHumidity: number;
  readonly wood: number;
}

/** Why a coat's drying cannot be reckoned. */
export const noModelReasons = [
  "no-air-reading",
  "time-not-known",
  "air-out-of-range",
  "jar-not-known",
  "part-without-a-name",
  "film-out-of-range",
] as const;
export type NoModelReason = (typeof noModelReasons)[number];

/** How a coat is to be followed: one run, or one for each jar that it may have come from. Plain data, for a worker. */
export type CoatSetups =
  | { readonly setups: readonly DryingSetup[]; readonly why: null }
  | { readonly setups: null; readonly why: NoModelReason };

const cannot = (why: NoModelReason): CoatSetups => ({ setups: null, why });

/** In a closed room, along a surface of a foot, on a board of 20 mm. */
const room = { speed: 0.1, length: 0.3, woodThickness: 0.02, woodDensity: 600 } as const;
/** Air changes over a day: a reading from longer ago says nothing of this coat. */
const airHolds = 6 * 3_600_000;

const inShop = (t: number): boolean => {
  const { min, max } = validShopTemperature;
  return t >= kelvinFromCelsius(min) && t <= kelvinFromCelsius(max);
};

/** The reading nearest to an instant, within six hours of it. */
export function airAt(read: NotebookReader, at: string): ShopAir | null {
  const when = epochMilliseconds(at);
  const far = (entry: NotebookEntry): number => Math.abs(epochMilliseconds(entry.happened) - when);
  const [nearest] = read
    .ofKind("air-read")
    .filter(hasAnHour)
    .sort((a, b) => far(a) - far(b));
  if (nearest === undefined || far(nearest) > airHolds) return null;
  const { temperature, relativeHumidity, wood } = nearest.body as Body<"air-read">;
  return {
    temperature: temperature.si,
    relativeHumidity: relativeHumidity.si,
    wood: wood?.si ?? temperature.si,
  };
}

interface WetOn {
  readonly liquid: CoatLiquid;
  /** m. */
  readonly wet: number;
  readonly beneath: number;
}

function setupOf({ liquid, wet, beneath }: WetOn, air: ShopAir): DryingSetup {
  return {
    applied: {
      composition: liquid.composition,
      thickness: metre(wet),
      cut: liquid.cut,
      partialDensity: usualPartialDensity,
      beneath: metre(beneath),
    },
    liquidTemperature: kelvin(air.wood),
    air: {
      temperature: kelvin(air.temperature),
      relativeHumidity: air.relativeHumidity,
      pressure: standardPressure,
      speed: room.speed,
    },
    length: metre(room.length),
    wood: {
      temperature: kelvin(air.wood),
      thickness: metre(room.woodThickness),
      density: kilogramPerCubicMetre(room.woodDensity),
    },
    radiation: true,
    seconds: 12 * 3600,
  };
}

function setupsOf(coats: readonly WetOn[], air: ShopAir | null): CoatSetups {
  if (coats.length === 0) return cannot("jar-not-known");
  if (coats.some(({ liquid }) => (liquid.composition.unknown ?? 0) > 0)) return cannot("part-without-a-name");
  if (air === null) return cannot("no-air-reading");
  const humid = air.relativeHumidity >= 0 && air.relativeHumidity <= 1;
  if (!humid || !inShop(air.temperature) || !inShop(air.wood)) return cannot("air-out-of-range");
  const fits = ({ wet }: WetOn): boolean => wet >= validThickness.min && wet <= validThickness.max;
  if (!coats.every(fits)) return cannot("film-out-of-range");
  return { setups: coats.map((coat) => setupOf(coat, air)), why: null };
}

/** A layer as it dried: in the air of its time, over the film that was there. */
export const layerSetups = (read: NotebookReader, layer: NotebookEntry, place: Place): CoatSetups =>
  read.derive(`layer-setups:${layer.id}:${placeKey(place)}`, (r) => {
    const beneath = filmBeneath(r, place, layer.id);
    const coats = liquidsOf(r, layer, place).map((liquid) => ({
      liquid,
      wet: wetCoat(r, layer, place, liquid.density).wet,
      beneath,
    }));
    // the air of a day is many airs
    return hasAnHour(layer) ? setupsOf(coats, airAt(r, layer.happened)) : cannot("time-not-known");
  });

/** A coat that has not gone on yet: a jar in some air, by a method's usual amount, over bare wood or a film [m]. */
export function jarSetups(
  read: NotebookReader,
  jar: string,
  method: CoatMethod,
  air: ShopAir | null,
  beneath = 0,
): CoatSetups {
  const coats = read.derive(`jar-coat:${jar}:${method}`, (r): readonly WetOn[] => {
    const liquid = liquidNow(r, jar);
    return liquid === null ? [] : [{ liquid, wet: usualCoat(r, method).wet, beneath: 0 }];
  });
  return setupsOf(
    coats.map((coat) => ({ ...coat, beneath })),
    air,
  );
}
