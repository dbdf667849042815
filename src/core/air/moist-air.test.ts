import fc from "fast-check";
import { expect, test } from "vitest";
import { expectNear } from "../../../test/near.ts";
import { celsiusFromKelvin, kelvin, pascal } from "../units.ts";
import {
  humidityRatio,
  humidityRatioFromWetBulb,
  moistAirEnthalpy,
  moistAirVolume,
  standardAtmosphere,
  standardPressure,
  validAltitude,
  vapourPressureFromHumidityRatio,
  wetBulb,
} from "./moist-air.ts";
import { waterSaturationPressure } from "./saturation-pressure.ts";

const at = (c: number) => kelvin(c + 273.15);

// ASHRAE Handbook—Fundamentals (2017), ch. 1, example 1: 40 °C dry bulb, 20 °C wet bulb, 101.325 kPa, read from its chart.
test("the handbook's example", () => {
  const ratio = humidityRatioFromWetBulb(at(40), at(20), standardPressure);
  expectNear(ratio, 0.0065, { absolute: 1e-4 });
  const relative = vapourPressureFromHumidityRatio(ratio, standardPressure) / waterSaturationPressure(at(40));
  expectNear(relative, 0.14, { absolute: 0.01 });
  expectNear(moistAirEnthalpy(at(40), ratio), 56.7, { absolute: 0.1 });
  expectNear(moistAirVolume(at(40), ratio, standardPressure), 0.896, { absolute: 9e-3 });
});

// The same, table 1 (standard atmosphere).
test.each([
  [0, 101_325],
  [500, 95_461],
  [1000, 89_875],
])("the standard atmosphere at %d m", (altitude, pressure) => {
  expectNear(standardAtmosphere(altitude), pressure, { relative: 3e-4 });
});

// WMO-No. 8, Guide to Meteorological Instruments, annex 4.B, the psychrometer formula, from memory: another equation for
// the same thermometer.
test.each([
  [20, 0.5],
  [30, 0.3],
  [10, 0.7],
  [25, 0.9],
])("the wet bulb at %d °C and %d is a psychrometer's, to 0.15 K", (air, rh) => {
  const bulb = wetBulb(at(air), rh, standardPressure);
  const wet = celsiusFromKelvin(bulb);
  const vapour =
    waterSaturationPressure(bulb) - 6.53e-4 * (1 + 9.44e-4 * wet) * standardPressure * (air - wet);
  const slope = waterSaturationPressure(at(wet + 0.5)) - waterSaturationPressure(at(wet - 0.5)) + 66;
  expect(Math.abs(vapour - rh * waterSaturationPressure(at(air))) / slope).toBeLessThan(0.15);
});

test("wet bulb and humidity ratio are inverses, and the ratio and its vapour pressure", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 10, max: 45, noNaN: true }),
      fc.double({ min: 0.25, max: 0.999, noNaN: true }),
      (air, rh) => {
        const vapour = pascal(rh * waterSaturationPressure(at(air)));
        const ratio = humidityRatio(vapour, standardPressure);
        const bulb = wetBulb(at(air), rh, standardPressure);
        expect(bulb).toBeLessThan(at(air));
        expectNear(humidityRatioFromWetBulb(at(air), bulb, standardPressure), ratio, { absolute: 1e-9 });
        expectNear(vapourPressureFromHumidityRatio(ratio, standardPressure), vapour, { relative: 1e-12 });
      },
    ),
  );
});

test("saturated air has its own temperature for a wet bulb", () => {
  expect(wetBulb(at(20), 1, standardPressure)).toBe(at(20));
});

test("what cannot be is refused, and NaN", () => {
  expect(() => wetBulb(at(20), 1.01, standardPressure)).toThrow(/relativeHumidity/);
  expect(() => wetBulb(at(20), Number.NaN, standardPressure)).toThrow(/relativeHumidity/);
  expect(() => wetBulb(at(2), 0.1, standardPressure)).toThrow(/freeze/);
  expect(() => humidityRatioFromWetBulb(at(20), at(21), standardPressure)).toThrow(/wetBulbC/);
  expect(() => humidityRatioFromWetBulb(at(40), at(1), standardPressure)).toThrow(/wetBulbC/);
  expect(() => humidityRatio(pascal(2e5), standardPressure)).toThrow(/vapourPressurePa/);
  expect(() => standardAtmosphere(validAltitude.min)).not.toThrow();
  expect(() => standardAtmosphere(validAltitude.max)).not.toThrow();
  expect(() => standardAtmosphere(validAltitude.min - 1)).toThrow(/altitudeM/);
  expect(() => standardAtmosphere(validAltitude.max + 1)).toThrow(/altitudeM/);
  expect(() => standardAtmosphere(Number.NaN)).toThrow(/altitudeM/);
});
