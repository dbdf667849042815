import { readFileSync } from "node:fs";
import fc from "fast-check";
import { expect, test } from "vitest";
import { celsius, celsiusFromKelvin, kelvin, kelvinFromCelsius } from "../units.ts";
import { dewPoint, validAirTemperature, validRelativeHumidity } from "./dew-point.ts";
import { validTemperature, waterSaturationPressure } from "./saturation-pressure.ts";

// Saturation pressures: ASHRAE Handbook—Fundamentals (2017), ch. 1, table 3, as quoted in an open library's tests; dew
// points computed outside the project. Tolerances from the file.
interface Case {
  readonly id: string;
  readonly kind: string;
  readonly input: { readonly t_C: number; readonly rh: number };
  readonly expected: { readonly p_Pa: number; readonly dew_point_C: number };
}
const { cases } = JSON.parse(
  readFileSync(new URL("../../../test/check-values/solutions/psychrometrics.json", import.meta.url), "utf8"),
) as { cases: Case[] };
const at = (c: number) => kelvinFromCelsius(celsius(c));

test.each(cases.filter((c) => c.kind === "saturation-pressure"))(
  "waterSaturationPressure(temperature): table 3, $id",
  ({ input, expected }) => {
    const tolerance = Math.max(expected.p_Pa * 3e-4, 0.01);
    expect(Math.abs(waterSaturationPressure(at(input.t_C)) - expected.p_Pa)).toBeLessThanOrEqual(tolerance);
  },
);

test.each(cases.filter((c) => c.kind === "dew-point"))("dewPoint: $id, to 0.05 °C", ({ input, expected }) => {
  expect(
    Math.abs(celsiusFromKelvin(dewPoint(at(input.t_C), input.rh)) - expected.dew_point_C),
  ).toBeLessThanOrEqual(0.05);
});

test("the worked example of the same chapter: 40 °C air at 14 % has its dew point at 7 °C, to half a degree", () => {
  expect(Math.abs(celsiusFromKelvin(dewPoint(at(40), 0.14)) - 7)).toBeLessThanOrEqual(0.5);
});

test("the two curves meet at the ice point within the formula's own accuracy", () => {
  const below = waterSaturationPressure(kelvin(273.15 - 1e-9));
  expect(Math.abs(below / waterSaturationPressure(kelvin(273.15)) - 1)).toBeLessThan(3e-4);
});

test("saturated air is at its dew point, and drier air is above it", () => {
  fc.assert(
    fc.property(
      fc.double({ min: validAirTemperature.min, max: validAirTemperature.max, noNaN: true }),
      fc.double({ min: validRelativeHumidity.min, max: 0.999, noNaN: true }),
      (t, humidity) => {
        const air = kelvin(t);
        expect(dewPoint(air, 1)).toBe(air);
        const dew = dewPoint(air, humidity);
        expect(dew).toBeLessThan(air);
        expect(dewPoint(air, Math.min(1, humidity + 1e-3))).toBeGreaterThan(dew);
        const inverse = waterSaturationPressure(dew) / waterSaturationPressure(air);
        expect(Math.abs(inverse - humidity)).toBeLessThan(1e-3 * humidity); // the step at the ice point included
      },
    ),
  );
});

test("both ends are in the range; just outside and NaN are not", () => {
  expect(() => dewPoint(validAirTemperature.min, validRelativeHumidity.min)).not.toThrow();
  expect(() => dewPoint(validAirTemperature.max, validRelativeHumidity.min)).not.toThrow();
  expect(() => dewPoint(kelvin(243.1), 0.5)).toThrow(/temperature/);
  expect(() => dewPoint(kelvin(333.2), 0.5)).toThrow(/temperature/);
  expect(() => dewPoint(at(20), 0.009)).toThrow(/relativeHumidity/);
  expect(() => dewPoint(at(20), 1.001)).toThrow(/relativeHumidity/);
  expect(() => dewPoint(at(20), Number.NaN)).toThrow(/relativeHumidity/);
  expect(() => waterSaturationPressure(kelvin(validTemperature.min - 0.01))).toThrow(/temperature/);
  expect(() => waterSaturationPressure(kelvin(validTemperature.max + 0.01))).toThrow(/temperature/);
});
