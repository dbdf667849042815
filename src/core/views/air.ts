import { dewPoint } from "../air/dew-point.ts";
import { DomainError } from "../domain-error.ts";
import { hasAnHour } from "../notebook/entry-time.ts";
import type { Body } from "../notebook/kinds/all.ts";
import type { NotebookReader } from "../notebook/reader.ts";
import { type Kelvin, kelvin } from "../units.ts";
import { defaultValue, type TradeDefault } from "./default-value.ts";

/** How well a shop's own instruments read, and how far above the dew point a surface should be. Editable. */
export const airDefaults = {
  hygrometer: { name: "hygrometer-give-or-take-percent", value: 3, unit: "% RH", known: "from memory" },
  thermometer: { name: "thermometer-give-or-take-kelvin", value: 0.5, unit: "K", known: "from memory" },
  /** General paint rule: the surface 3 °C above the dew point. */
  margin: { name: "least-above-dew-point-kelvin", value: 3, unit: "K", known: "common practice" },
} as const satisfies Record<string, TradeDefault>;

export interface DewMargin {
  readonly dewPoint: Kelvin;
  readonly dewGiveOrTake: number;
  /** Wood less dew point [K]. */
  readonly margin: number;
  readonly giveOrTake: number;
  /** What is asked for [K]. */
  readonly least: number;
  /** `wet`: at or below the dew point; `thin`: less than is asked for; `enough`: neither. */
  readonly state: "wet" | "thin" | "enough";
}

export interface AirView {
  readonly entry: string;
  readonly at: string;
  readonly place: string | null;
  readonly temperature: number;
  readonly relativeHumidity: number;
  /** As read, or taken to be as warm as the air where it was not. */
  readonly wood: number;
  readonly woodRead: boolean;
  /** Null where the reading lies outside what the formula covers. */
  readonly dew: DewMargin | null;
}

/** By how much the dew point moves when what it comes from is off by its give or take: differences, in quadrature. */
function dewOf(read: NotebookReader, air: Kelvin, humidity: number, wood: number): DewMargin {
  const thermometer = defaultValue(read, airDefaults.thermometer);
  const hygrometer = defaultValue(read, airDefaults.hygrometer) / 100;
  const least = defaultValue(read, airDefaults.margin);
  const dew = dewPoint(air, humidity);
  const byHumidity = dew - dewPoint(air, Math.max(0.01, humidity - hygrometer));
  const byAir = dew - dewPoint(kelvin(air - thermometer), humidity);
  const dewGiveOrTake = Math.hypot(byHumidity, byAir);
  const margin = wood - dew;
  return {
    dewPoint: dew,
    dewGiveOrTake,
    margin,
    giveOrTake: Math.hypot(dewGiveOrTake, thermometer),
    least,
    state: margin <= 0 ? "wet" : margin < least ? "thin" : "enough",
  };
}

/** The last reading of the shop's air, and how far the wood is from drawing water out of it. */
export const airView = (read: NotebookReader): AirView | null =>
  read.derive("air", (r) => {
    const readings = r.ofKind("air-read").filter(hasAnHour); // of a day alone it is not the air of any hour
    const last = [...readings].sort((a, b) => (a.happened < b.happened ? -1 : 1)).at(-1);
    if (last === undefined) return null;
    const body = last.body as Body<"air-read">;
    const wood = body.wood?.si ?? body.temperature.si;
    return {
      entry: last.id,
      at: last.happened,
      place: body.place ?? null,
      temperature: body.temperature.si,
      relativeHumidity: body.relativeHumidity.si,
      wood,
      woodRead: body.wood !== undefined,
      dew: dewWhereKnown(r, body.temperature.si, body.relativeHumidity.si, wood),
    };
  });

/** How far wood is from drawing water out of an air, by this shop's instruments; null outside what the dew point covers. */
export function dewWhereKnown(
  read: NotebookReader,
  air: number,
  humidity: number,
  wood: number,
): DewMargin | null {
  try {
    return dewOf(read, kelvin(air), humidity, wood);
  } catch (error) {
    if (error instanceof DomainError) return null;
    throw error;
  }
}
