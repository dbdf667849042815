import { expect, test } from "vitest";
import { expectNear } from "../../../test/near.ts";
import { kelvin, kilogramPerCubicMetre, massFraction, metre } from "../units.ts";
import { integrateStiff } from "./rodas.ts";
import { slabOf, validWoodDensity, woodHeat } from "./wood-slab.ts";

/** Kelvins that the face of a board has risen by under a steady flow of heat [W/m²]. */
function faceAfter(seconds: number, flow: number): number {
  const slab = slabOf(metre(0.05), kilogramPerCubicMetre(600), { conductivity: 0.14, heatCapacity: 1600 });
  const n = slab.capacities.length;
  const rates = (y: Float64Array, out: Float64Array): void => {
    let down = flow;
    for (let i = 0; i < n; i++) {
      const above = (k: number): number => (y[k] ?? 0) / (slab.capacities[k] ?? 1);
      const next = i + 1 < n ? (slab.conductances[i + 1] ?? 0) * (above(i) - above(i + 1)) : 0;
      out[i] = down - next;
      down = next;
    }
  };
  let first = 0;
  integrateStiff(
    {
      size: n,
      small: slab.capacities.slice(),
      rates,
      jacobian: (y, r, out) => {
        const column = new Float64Array(n);
        for (let j = 0; j < n; j++) {
          const moved = y.slice();
          moved[j] = (moved[j] ?? 0) + 1;
          rates(moved, column);
          for (let i = 0; i < n; i++) out[i * n + j] = (column[i] ?? 0) - (r[i] ?? 0);
        }
      },
    },
    {
      from: new Float64Array(n),
      until: seconds,
      tolerance: 1e-6,
      firstStep: 1e-3,
      onStep: (_, __, step) => {
        first = (step.end[0] ?? 0) / (slab.capacities[0] ?? 1);
        return false;
      },
    },
  );
  return first + flow / (slab.conductances[0] ?? 1);
}

// H. S. Carslaw, J. C. Jaeger, Conduction of Heat in Solids (1959), section 2.9: a thick solid under a steady flow.
test.each([
  [20, 0.03],
  [60, 0.02],
  [300, 0.02],
  [900, 0.02],
])("the face of a thick board after %d s, within a part of %d of the analytic solution", (t, relative) => {
  const exact = 100 * Math.sqrt((4 * t) / (Math.PI * 0.14 * 600 * 1600));
  expectNear(faceAfter(t, 100), exact, { relative });
});

test("all the heat of a board is in its layers", () => {
  const slab = slabOf(metre(0.02), kilogramPerCubicMetre(500), { conductivity: 0.12, heatCapacity: 1500 });
  const total = slab.capacities.reduce((sum, c) => sum + c, 0);
  expectNear(total, 0.02 * 500 * 1500, { relative: 1e-12 });
});

// USDA Wood Handbook, table 4-7: red oak at 12 % moisture, specific gravity 0.58 (12 %) has 0.18 W/(m·K), white pine at
// 0.37 has 0.12, each within the 20 % by which pieces differ; heat capacity at 27 °C and 12 %: 1.7 kJ/(kg·K) (table 4-8). From memory.
test.each([
  [0.58, 0.18],
  [0.37, 0.12],
])("conductivity of wood of gravity %d is %d W/(m·K)", (gravity, conductivity) => {
  const density = kilogramPerCubicMetre(gravity * 1120);
  expectNear(woodHeat(density, massFraction(0.12), kelvin(300)).conductivity, conductivity, {
    relative: 0.2,
  });
});

test("heat capacity at 12 % moisture", () => {
  const { heatCapacity } = woodHeat(kilogramPerCubicMetre(600), massFraction(0.12), kelvin(300));
  expectNear(heatCapacity, 1650, { relative: 0.05 });
});

test("both ends of the density are in the range; just outside and NaN are not", () => {
  const of = (x: number) => woodHeat(kilogramPerCubicMetre(x), massFraction(0.1), kelvin(293.15));
  expect(() => of(validWoodDensity.min)).not.toThrow();
  expect(() => of(validWoodDensity.max)).not.toThrow();
  expect(() => of(validWoodDensity.min - 1)).toThrow(/densityKgM3/);
  expect(() => of(validWoodDensity.max + 1)).toThrow(/densityKgM3/);
  expect(() => of(Number.NaN)).toThrow();
});
