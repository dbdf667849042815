import { dewPoint, validRelativeHumidity } from "../air/dew-point.ts";
import { inRange } from "../domain-error.ts";
import {
  celsius,
  celsiusFromKelvin,
  type Kelvin,
  type KilogramPerCubicMetre,
  type Metre,
  type Pascal,
} from "../units.ts";
import { equilibriumMoisture } from "../wood/equilibrium-moisture.ts";
import { FilmEquations } from "./film-equations.ts";
import { glassTemperature, kelvinAboveGlass, recoatDecades, touchDryDecades } from "./resin-hold.ts";
import { type FilmEvent, type FilmRun, type FilmState, runFilm, usualTolerance } from "./run-film.ts";
import type { Volatile } from "./volatiles.ts";
import { type Applied, wetFilmOf } from "./wet-film.ts";
import { slabOf, woodHeat } from "./wood-slab.ts";

export interface DryingAir {
  readonly temperature: Kelvin;
  readonly relativeHumidity: number;
  readonly pressure: Pascal;
  /** m/s along the surface. */
  readonly speed: number;
}

export interface DryingWood {
  readonly temperature: Kelvin;
  readonly thickness: Metre;
  readonly density: KilogramPerCubicMetre;
}

export interface DryingSetup {
  readonly applied: Applied;
  /** Of the liquid as it is put on; a thin film has the wood's in a second. */
  readonly liquidTemperature: Kelvin;
  readonly air: DryingAir;
  /** Of the surface along the draught. */
  readonly length: Metre;
  readonly wood: DryingWood | null;
  readonly radiation: boolean;
  readonly seconds: number;
}

export interface DryingRun {
  readonly equations: FilmEquations;
  readonly run: FilmRun;
  readonly components: readonly Volatile[];
  /** Seconds; null where it does not come to it in the time. */
  readonly touchDry: number | null;
  readonly recoat: number | null;
  readonly lowestSurface: Kelvin;
  /** Null in air too dry to have one. */
  readonly dewPoint: Kelvin | null;
  /** Water among what is still liquid when the film sets, by mass; null without resin, or where it does not set. */
  readonly waterShareAtSet: number | null;
  readonly waterShareAtEnd: number;
  /** Largest misclosure of mass, and of heat, over what was exchanged. */
  readonly massBalance: number;
  readonly heatBalance: number;
}

export interface HowFar {
  readonly tolerance?: number;
  /** Stops where the film comes to it. */
  readonly until?: "touch-dry" | "recoat";
}

export const validThickness = { min: 1e-6, max: 5e-4 } as const;
export const validShopTemperature = { min: celsius(0), max: celsius(50) } as const;
export const validWoodThickness = { min: 1e-3, max: 0.2 } as const;

function equationsOf(setup: DryingSetup): FilmEquations {
  const { air, wood, applied } = setup;
  inRange("air.temperatureC", celsiusFromKelvin(air.temperature), validShopTemperature);
  inRange("film.wetUm", applied.thickness * 1e6, {
    min: validThickness.min * 1e6,
    max: validThickness.max * 1e6,
  });
  const moisture = equilibriumMoisture(celsiusFromKelvin(air.temperature), air.relativeHumidity);
  const slab =
    wood === null
      ? null
      : slabOf(wood.thickness, wood.density, woodHeat(wood.density, moisture, wood.temperature));
  const room = { ...air, length: setup.length, radiation: setup.radiation, extraHeat: 0 };
  return new FilmEquations(wetFilmOf(applied), room, slab, {
    film: setup.liquidTemperature,
    wood: wood?.temperature ?? air.temperature,
  });
}

/** How far the glass temperature of a film still has to rise, K, for a stiffness at a temperature. */
function short(
  equations: FilmEquations,
  decades: number,
  at: (y: Float64Array) => number,
): (y: Float64Array) => number {
  const { components, resinMass } = equations.surface.film;
  const above = kelvinAboveGlass(decades);
  return (y) => {
    const masses = equations.masses(y);
    const liquids = components.map((c, i) => [c, Math.max(0, masses[i] ?? 0)] as const);
    return above - (at(y) - glassTemperature(resinMass, liquids));
  };
}

/** A coat goes on over a film that is firm at room temperature: one that the cold alone makes stiff still holds its alcohol. */
const roomTemperature = 293.15;

function eventsOf(equations: FilmEquations, until: HowFar["until"]): readonly FilmEvent[] {
  const { resinVolume, moles } = equations.surface.film;
  if (resinVolume === 0) {
    const whole = equations.surface.liquidVolume(Float64Array.from(moles));
    const left = (y: Float64Array): number => equations.surface.liquidVolume(y) / whole;
    return [{ name: "gone", quantity: (y) => 1e-3 - left(y), ends: true }];
  }
  return [
    {
      name: "touch-dry",
      quantity: short(equations, touchDryDecades, equations.temperature),
      ends: until === "touch-dry",
    },
    {
      name: "recoat",
      quantity: short(equations, recoatDecades, () => roomTemperature),
      ends: until === "recoat",
    },
  ];
}

function waterShare(equations: FilmEquations, state: FilmState): number {
  const masses = equations.masses(state.y).map((m) => Math.max(0, m));
  const total = masses.reduce((sum, m) => sum + m, 0);
  return (masses[equations.surface.film.components.indexOf("water")] ?? 0) / total;
}

/** What went in and out against what is there: nothing is lost but by the arithmetic. */
function balances(equations: FilmEquations, end: FilmState): { mass: number; heat: number } {
  const { mass, fromAir, withVapour } = equations.sums(end.y);
  const total = (y: Float64Array): number => equations.masses(y).reduce((sum, m) => sum + m, 0);
  const gained = equations.heat(end.y) - equations.heat(equations.start);
  return {
    mass: (total(equations.start) - total(end.y) - mass) / total(equations.start),
    heat: (gained - fromAir + withVapour) / Math.max(Math.abs(withVapour), Math.abs(fromAir)),
  };
}

const orNull = (state: FilmState | undefined): number | null => state?.seconds ?? null;

/**
 * How a wet film dries on wood: what it loses to the air and takes from it, how cold it gets, and when it is dry.
 *
 *     Ni = (yi − yi∞)/(1/(gi·Θ) + Ri),  yi = xi·γi·Fi·psati(T)/p,  gi = h/(cp·Mair)·(Di/Dwater)^⅔
 *     heat: h·(Tair − T) + radiation + wood − Σ Ni·Δhi
 *
 * The film is even inside but for a resistance Ri that grows as the resin stiffens; the wood beneath conducts heat and
 * takes up no liquid. Touch-dry and dry enough for a coat are viscosities of 10³ and 10⁷ Pa·s.
 *
 * @param setup      liquid and thickness [m], air [K, Pa, m/s], wood, radiation, how long [s]
 * @param how        relative tolerance a step, and where to stop before the time is over
 * @returns          the run with its states, times [s], lowest surface temperature [K] until it sets, dew point [K],
 *                   water share at set, balances
 * @throws DomainError outside the ranges, and for a part without a name
 *
 * Valid:    films of 1–500 µm in air of 0–50 °C up to 5 m/s, liquids that do not sink into the wood
 * Accuracy: evaporation 20 %, as the heat transfer; touch-dry a factor of 1.5 and the last stage a factor of 3, fitted to practice
 * Source:   as `airSide`, `activityModel`, `resinFactor`, `diffusivityInFilm`, `glassTemperature`, `integrateStiff`
 */
export function dryFilm(setup: DryingSetup, how: HowFar = {}): DryingRun {
  const equations = equationsOf(setup);
  const events = eventsOf(equations, how.until);
  const run = runFilm(equations, setup.seconds, events, how.tolerance ?? usualTolerance);
  const set = run.events.get("touch-dry");
  const until = set?.seconds ?? Number.POSITIVE_INFINITY;
  const wet = run.states.filter((s) => s.seconds <= until);
  const end = run.states.at(-1) as FilmState; // a run has its start at least
  const { mass, heat } = balances(equations, end);
  const { temperature, relativeHumidity } = setup.air;
  return {
    equations,
    run,
    components: equations.surface.film.components,
    touchDry: orNull(set),
    recoat: orNull(run.events.get("recoat")),
    lowestSurface: Math.min(...wet.map((s) => equations.temperature(s.y))) as Kelvin,
    dewPoint: relativeHumidity < validRelativeHumidity.min ? null : dewPoint(temperature, relativeHumidity),
    waterShareAtSet: set === undefined ? null : waterShare(equations, set),
    waterShareAtEnd: waterShare(equations, end),
    massBalance: mass,
    heatBalance: heat,
  };
}
