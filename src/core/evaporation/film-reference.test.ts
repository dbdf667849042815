import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { expectNear } from "../../../test/near.ts";
import { celsius, kelvin, kilogramPerCubicMetre, metre, pascal } from "../units.ts";
import { equilibriumMoisture } from "../wood/equilibrium-moisture.ts";
import { FilmEquations } from "./film-equations.ts";
import type { WetFilm } from "./film-surface.ts";
import { glassTemperature, kelvinAboveGlass, touchDryDecades } from "./resin-hold.ts";
import { runFilm, usualTolerance } from "./run-film.ts";
import { slabOf, woodHeat } from "./wood-slab.ts";

/**
 * The same films by another hand: the equations written anew in Python over the outside tables, integrated by SciPy's
 * implicit Runge-Kutta method (Radau IIA, relative tolerance 1e-9). See scripts/reference/drying.py.
 */
interface Case {
  readonly film: WetFilm;
  readonly liquidTemperature: number;
  readonly air: { readonly temperature: number; readonly relativeHumidity: number; readonly speed: number };
  readonly length: number;
  readonly wood: {
    readonly temperature: number;
    readonly thickness: number;
    readonly density: number;
  } | null;
  readonly radiation: boolean;
  readonly times: readonly number[];
}
interface Reference {
  readonly masses: readonly (readonly number[])[];
  readonly temperatures: readonly number[];
  readonly touchDry: number | null;
}
const read = <T>(name: string): T =>
  JSON.parse(
    readFileSync(new URL(`../../../test/check-values/evaporation/${name}`, import.meta.url), "utf8"),
  ) as T;
const cases = Object.entries(read<Record<string, Case>>("drying-cases.json"));
const references = read<{ cases: Record<string, Reference> }>("drying-reference.json").cases;

function equationsOf({ film, air, wood, ...c }: Case): FilmEquations {
  const density = kilogramPerCubicMetre(wood?.density ?? 600);
  const moisture = equilibriumMoisture(celsius(air.temperature - 273.15), air.relativeHumidity);
  const at = kelvin(wood?.temperature ?? air.temperature);
  return new FilmEquations(
    film,
    {
      ...air,
      temperature: kelvin(air.temperature),
      pressure: pascal(101_325),
      length: c.length,
      radiation: c.radiation,
      extraHeat: 0,
    },
    wood === null ? null : slabOf(metre(wood.thickness), density, woodHeat(density, moisture, at)),
    { film: kelvin(c.liquidTemperature), wood: at },
  );
}

test.each(cases)("%s: masses and temperature at every time, by two tolerances", (name, given) => {
  const reference = references[name];
  if (reference === undefined) throw new Error(`no reference for ${name}`);
  const equations = equationsOf(given);
  const whole = equations.masses(equations.start).reduce((sum, m) => sum + m, 0);
  for (const [tolerance, mass, heat] of [
    [1e-8, 1e-6, 1e-4],
    [usualTolerance, 1e-5, 1e-3],
  ] as const)
    given.times.forEach((time, k) => {
      const end = runFilm(equations, time, [], tolerance).states.at(-1);
      if (end === undefined) throw new Error("no states");
      equations.masses(end.y).forEach((m, i) => {
        expectNear(m, reference.masses[k]?.[i] ?? Number.NaN, { absolute: mass * whole });
      });
      expectNear(equations.temperature(end.y), reference.temperatures[k] ?? Number.NaN, { absolute: heat });
    });
});

test.each(cases.filter(([name]) => references[name]?.touchDry !== null))(
  "%s: touch-dry at the same moment, to a thousandth",
  (name, given) => {
    const equations = equationsOf(given);
    const { components, resinMass } = equations.surface.film;
    const quantity = (y: Float64Array): number => {
      const masses = equations.masses(y).map((m, i) => [components[i] ?? "water", Math.max(0, m)] as const);
      const glass = glassTemperature(resinMass, masses);
      return kelvinAboveGlass(touchDryDecades) - (equations.temperature(y) - glass);
    };
    const { events } = runFilm(equations, 7200, [{ name: "touch", quantity, ends: true }]);
    expectNear(events.get("touch")?.seconds ?? Number.NaN, references[name]?.touchDry ?? Number.NaN, {
      relative: 1e-3,
    });
  },
);

test("all four are read, and one of them has each of the two activity models", () => {
  const methods = cases.map(([, given]) => equationsOf(given).surface.method);
  expect(methods).toHaveLength(4);
  expect(new Set(methods).size).toBe(2);
});
