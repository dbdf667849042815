import { calculate } from "../../core/registry/calculation.ts";
import type { Problem } from "../../core/registry/problem.ts";
import { woodMoisture } from "../../core/registry/wood-moisture.ts";
import type { Result } from "../../core/result.ts";
import type { Grain } from "../../core/wood/movement.ts";
import { type WoodSpecies, woodSpecies } from "../../core/wood/shrinkage.ts";
import { fields, readQuantity } from "../controls/read-quantity.ts";

export type Moisture = ReturnType<typeof woodMoisture.run>;

/** What is typed of one season's air. */
export interface TypedSeason {
  readonly temperature: string;
  readonly humidity: string;
}

export interface PanelDraft {
  readonly species: WoodSpecies;
  readonly grain: Grain;
  readonly width: string;
  readonly dry: TypedSeason;
  readonly damp: TypedSeason;
}

/** A heated room in winter and an open house in a wet summer: examples from memory, to be typed over. */
export const firstDraft: PanelDraft = {
  species: "cherry, black",
  grain: "tangential",
  width: "300 mm",
  dry: { temperature: "20 °C", humidity: "30 %" },
  damp: { temperature: "22 °C", humidity: "70 %" },
};

export const speciesOptions = woodSpecies.map((value) => ({ value, label: value }));

const temperature = (typed: string) => readQuantity(typed, fields.airTemperature);
const humidity = (typed: string) => readQuantity(typed, fields.relativeHumidity);

export const seasonReadings = (season: TypedSeason) => ({
  temperature: temperature(season.temperature),
  humidity: humidity(season.humidity),
});
export const widthReading = (typed: string) => readQuantity(typed, { ...fields.length, min: 0.001, max: 5 });

interface Air {
  readonly temperatureC: number;
  readonly relativeHumidity: number;
}

const celsius = (kelvin: number): number => Number((kelvin - 273.15).toFixed(6));

export const airOf = (air: { readonly temperature: number; readonly relativeHumidity: number }): Air => ({
  temperatureC: celsius(air.temperature),
  relativeHumidity: air.relativeHumidity,
});

function seasonAir(typed: TypedSeason): Air | undefined {
  const read = seasonReadings(typed);
  if (!read.temperature.ok || !read.humidity.ok) return undefined;
  return { temperatureC: celsius(read.temperature.value.si), relativeHumidity: read.humidity.value.si };
}

/** Where wood settles in an air. */
export const settlesAt = (air: Air): Result<Moisture, Problem> =>
  calculate(woodMoisture, air) as Result<Moisture, Problem>; // what this calculation gives

/** How the panel moves from the dry season to the damp one; nothing while a field cannot be read. */
export function panelMoves(draft: PanelDraft): Result<Moisture, Problem> | undefined {
  const [dry, damp] = [seasonAir(draft.dry), seasonAir(draft.damp)];
  const width = widthReading(draft.width);
  if (dry === undefined || damp === undefined || !width.ok) return undefined;
  const panel = {
    species: draft.species,
    widthMm: Number((width.value.si * 1e3).toFixed(6)),
    grain: draft.grain,
  };
  return calculate(woodMoisture, { ...dry, otherSeason: damp, panel }) as Result<Moisture, Problem>;
}
