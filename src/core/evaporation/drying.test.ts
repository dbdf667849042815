import { expect, test } from "vitest";
import { expectNear } from "../../../test/near.ts";
import { wetBulb } from "../air/moist-air.ts";
import type { Composition } from "../solution/composition.ts";
import { usualPartialDensity } from "../solution/resin.ts";
import {
  cutFromPoundsPerUsGallon,
  kelvin,
  kilogramPerCubicMetre,
  massFraction,
  metre,
  pascal,
} from "../units.ts";
import { type DryingRun, type DryingSetup, dryFilm } from "./drying.ts";
import { usualTolerance } from "./run-film.ts";

const pressure = pascal(101_325);
const ethanol95: Composition = { ethanol: massFraction(0.924), water: massFraction(0.076) };

interface Changes {
  readonly composition?: Composition;
  readonly wetUm?: number;
  readonly lb?: number;
  readonly beneathUm?: number;
  readonly airC?: number;
  readonly rh?: number;
  readonly speed?: number;
  readonly woodC?: number | null;
  readonly radiation?: boolean;
  readonly hours?: number;
}

function setup(c: Changes = {}): DryingSetup {
  const airC = c.airC ?? 21;
  const woodC = c.woodC === undefined ? airC : c.woodC;
  return {
    applied: {
      composition: c.composition ?? ethanol95,
      thickness: metre((c.wetUm ?? 125) / 1e6),
      cut: cutFromPoundsPerUsGallon(c.lb ?? 2),
      partialDensity: usualPartialDensity,
      beneath: metre((c.beneathUm ?? 0) / 1e6),
    },
    liquidTemperature: kelvin(273.15 + (woodC ?? airC)),
    air: {
      temperature: kelvin(273.15 + airC),
      relativeHumidity: c.rh ?? 0.5,
      pressure,
      speed: c.speed ?? 0.1,
    },
    length: metre(0.3),
    wood:
      woodC === null
        ? null
        : {
            temperature: kelvin(273.15 + woodC),
            thickness: metre(0.02),
            density: kilogramPerCubicMetre(600),
          },
    radiation: c.radiation ?? true,
    seconds: (c.hours ?? 12) * 3600,
  };
}
const dried = (c: Changes = {}, tolerance?: number): DryingRun =>
  dryFilm(setup(c), tolerance === undefined ? {} : { tolerance });

/** Where a film of water settles before it is gone, K. */
function settled(c: Changes): number {
  const water = { composition: { water: massFraction(1) }, wetUm: 400, lb: 0, woodC: null, hours: 0.5 };
  const { equations, run } = dried({ ...water, ...c });
  const wet = run.states.filter((s) => equations.surface.liquidVolume(s.y) > 1e-4).at(-1);
  return equations.temperature(wet?.y ?? equations.start);
}

// Twelve conditions, against the wet bulb of ASHRAE Fundamentals (2017), ch. 1, eq. 33: 0.04 K was found at most.
const conditions = [10, 20, 30].flatMap((airC) => [0.2, 0.4, 0.6, 0.8].map((rh) => [airC, rh] as const));
test.each(conditions)("water alone in air of %d °C and %d settles at the wet bulb, to 0.1 K", (airC, rh) => {
  for (const speed of [0.1, 2])
    expectNear(settled({ airC, rh, speed, radiation: false }), wetBulb(kelvin(273.15 + airC), rh, pressure), {
      absolute: 0.1,
    });
});

test("with the walls' radiation it settles above the wet bulb, and falls towards it with the draught", () => {
  const bulb = wetBulb(kelvin(293.15), 0.3, pressure);
  const above = [0.1, 0.5, 2, 5].map((speed) => settled({ airC: 20, rh: 0.3, speed }) - bulb);
  expect(above.at(-1)).toBeGreaterThan(0.3);
  for (let i = 1; i < above.length; i++) expect(above[i]).toBeLessThan(above[i - 1] ?? 0);
});

test("mass and heat are accounted for to a millionth, whatever the film", () => {
  const films: Changes[] = [{}, { rh: 0.85, woodC: 12 }, { wetUm: 12 }, { woodC: null, lb: 0 }, { rh: 0 }];
  for (const film of films) {
    const { massBalance, heatBalance } = dried(film);
    expect(Math.abs(massBalance)).toBeLessThan(1e-6);
    expect(Math.abs(heatBalance)).toBeLessThan(1e-6);
  }
});

test("the mass that is gone is the flux summed up another way: Simpson's rule over the states", () => {
  const { equations, run } = dried({}, 1e-8);
  const flows = equations.surface.noFlows();
  const flux = (y: Float64Array): number => {
    equations.surface.flows(y, equations.temperature(y), flows);
    return flows.mass;
  };
  let gone = 0;
  for (let i = 0; i + 2 < run.states.length; i += 2) {
    const [a, b, c] = run.states.slice(i, i + 3);
    if (a === undefined || b === undefined || c === undefined) break;
    // Simpson's rule for unequal halves
    const [h, k] = [b.seconds - a.seconds, c.seconds - b.seconds];
    const weights = [2 - k / h, (h + k) ** 2 / (h * k), 2 - h / k];
    [a, b, c].forEach((s, j) => {
      gone += ((h + k) / 6) * (weights[j] ?? 0) * flux(s.y);
    });
  }
  const last = run.states.at(run.states.length % 2 === 1 ? -1 : -2);
  expectNear(gone, equations.sums(last?.y ?? equations.start).mass, { relative: 2e-5 });
});

test("half the tolerance moves touch-dry by less than a thousandth", () => {
  for (const film of [
    {},
    { wetUm: 25 },
    { rh: 0.8, woodC: 14 },
    { composition: { isopropanol: massFraction(1) } },
  ]) {
    const [usual, half] = [dried(film), dried(film, usualTolerance / 2)];
    expectNear(usual.touchDry ?? 0, half.touchDry ?? Number.NaN, { relative: 1e-3 });
    expectNear(usual.recoat ?? 0, half.recoat ?? Number.NaN, { relative: 1e-3 });
  }
});

// Common practice, in a shop of 21 °C and 50 %: a brushed coat is touch-dry within half an hour and takes another after
// 1–3 h; the pad goes again after minutes to a quarter of an hour.
test("waits are those of practice", () => {
  const brushed = dried();
  expect((brushed.touchDry ?? 0) / 60).toBeGreaterThan(5);
  expect((brushed.touchDry ?? 0) / 60).toBeLessThan(30);
  expect((brushed.recoat ?? 0) / 3600).toBeGreaterThan(1);
  expect((brushed.recoat ?? 0) / 3600).toBeLessThan(3);
  const padded = dried({ wetUm: 25 });
  expect((padded.recoat ?? 0) / 60).toBeGreaterThan(2);
  expect((padded.recoat ?? 0) / 60).toBeLessThan(15);
});

// Common practice at the same: a padded coat takes a second after 15 min and that one a third after 30; a supplier's sheet
// lets later brushed coats wait about 8 h. The model claims a factor of 3. (Two hours after a third padded coat, as is
// practised, it does not see: it lets a coat melt so much of the film below and no more.)
test.each([
  ["a padded coat", { wetUm: 28.5 }, 15],
  ["a second one", { wetUm: 28.5, beneathUm: 5 }, 30],
  ["a brushed coat", {}, 90],
  ["a fourth one", { beneathUm: 57 }, 480],
] as const)("%s waits as in practice, within the factor of 3 that is claimed", (_, coat, minutes) => {
  const waits = (dried({ ...coat, hours: 24 }).recoat ?? Number.NaN) / 60;
  expect(waits).toBeGreaterThan(minutes / 3);
  expect(waits).toBeLessThan(minutes * 3);
});

test("cold, a slower alcohol, a heavier coat and film beneath make a coat wait; a fan and warmth hurry it", () => {
  const recoat = (c: Changes): number => dried(c).recoat ?? Number.POSITIVE_INFINITY;
  const touch = (c: Changes): number => dried(c).touchDry ?? Number.POSITIVE_INFINITY;
  const usual = recoat({});
  expect(recoat({ airC: 10 })).toBeGreaterThan(1.5 * usual);
  expect(recoat({ wetUm: 200 })).toBeGreaterThan(usual);
  expect(recoat({ wetUm: 25, beneathUm: 30 })).toBeGreaterThan(1.5 * recoat({ wetUm: 25 }));
  const slow = { ethanol: massFraction(0.9), "n-butanol": massFraction(0.1) };
  expect(recoat({ composition: slow })).toBeGreaterThan(usual);
  expect(touch({ speed: 1 })).toBeLessThan(touch({}));
  expect(touch({ airC: 27 })).toBeLessThan(touch({}));
});

test("water is taken from damp air, and a film in the open comes to the water that lac holds: 2–5 % at 75 %", () => {
  const dry: Composition = { ethanol: massFraction(1) };
  const { equations, run } = dried({ composition: dry, rh: 0.75, wetUm: 25 });
  const water = equations.surface.film.components.indexOf("water");
  const masses = run.states.map((s) => equations.masses(s.y)[water] ?? 0);
  expect(masses[0]).toBe(0);
  expect(Math.max(...masses)).toBeGreaterThan(2 * (masses.at(-1) ?? 0));
  const held = (masses.at(-1) ?? 0) / equations.surface.film.resinMass;
  expect(held).toBeGreaterThan(0.02);
  expect(held).toBeLessThan(0.05);
});

test("films do not set as pure water: what each liquid finds in the resin differs", () => {
  const share = dried({ rh: 0.4 }).waterShareAtSet ?? 1;
  expect(share).toBeGreaterThan(0.01);
  expect(share).toBeLessThan(0.6);
});

test("solvent alone leaves, and nothing sets", () => {
  const { touchDry, run, waterShareAtSet } = dried({
    lb: 0,
    composition: { ethanol: massFraction(1) },
    rh: 0,
  });
  expect([touchDry, waterShareAtSet]).toEqual([null, null]);
  expect(run.events.get("gone")?.seconds).toBeGreaterThan(60);
});

test("both ends of thickness and temperature are in the range; just outside is not, nor a part without a name", () => {
  expect(() => dried({ wetUm: 1, hours: 1 })).not.toThrow();
  expect(() => dried({ wetUm: 500, hours: 1 })).not.toThrow();
  expect(() => dried({ wetUm: 0.99 })).toThrow(/wetUm/);
  expect(() => dried({ wetUm: 501 })).toThrow(/wetUm/);
  expect(() => dried({ airC: 0, hours: 1 })).not.toThrow();
  expect(() => dried({ airC: 50, hours: 1 })).not.toThrow();
  expect(() => dried({ airC: 50.1 })).toThrow(/temperatureC/);
  expect(() => dried({ airC: -0.1 })).toThrow(/temperatureC/);
  expect(() => dried({ composition: { unknown: massFraction(1) } })).toThrow(/unknown/);
  expect(() => dried({ composition: { ethanol: massFraction(0.9) } })).toThrow(/add up to 1/);
});
