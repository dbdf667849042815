import { expect, test } from "vitest";
import { calibrationLine, correctionAt } from "./calibration-line.ts";
import { dayToDay } from "./day-to-day.ts";

// JCGM 100:2008, table H.6: a thermometer's corrections at eleven temperatures, °C (from memory; the printed results agree).
const places = [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.01, 26.511];
const corrections = [171, 169, 166, 159, 164, 165, 156, 157, 159, 161, 160].map((x) => -x / 1000);

test("the thermometer of JCGM 100, H.3", () => {
  const line = calibrationLine(places, corrections, 20);
  expect(line.intercept).toBeCloseTo(-0.1712, 4);
  expect(line.interceptUncertainty).toBeCloseTo(0.0029, 4);
  expect(line.slope).toBeCloseTo(0.00218, 5);
  expect(line.slopeUncertainty).toBeCloseTo(0.00067, 5);
  expect(line.correlation).toBeCloseTo(-0.93, 3);
  expect(line.residual).toBeCloseTo(0.0035, 4);
  const at30 = correctionAt(line, 10);
  expect(at30.value).toBeCloseTo(-0.1494, 4);
  expect(at30.standardUncertainty).toBeCloseTo(0.0041, 4);
});

// JCGM 100:2008, table H.9: a Zener voltage on ten days, five readings a day, µV over 10 V (from memory).
const voltages = [172, 116, 13, 144, 106, 31, 60, 125, 163, 41];
const daySds = [60, 77, 111, 101, 67, 93, 80, 73, 88, 86];

test("the voltage standard of JCGM 100, H.5", () => {
  const found = dayToDay(voltages, daySds, 5);
  expect(found.mean).toBeCloseTo(97, 0);
  expect(found.betweenMeans).toBeCloseTo(57, 0);
  expect(Math.sqrt(5) * found.betweenMeans).toBeCloseTo(128, 0);
  expect(found.within).toBeCloseTo(85, 0);
  expect(found.statistic).toBeCloseTo(2.25, 1);
  expect(found.degreesOfFreedom).toEqual([9, 40]);
  // F(0.95; 9, 40) = 2.12 and F(0.975; 9, 40) = 2.45 there: between 2.5 and 5 %
  expect(found.pValue).toBeGreaterThan(0.025);
  expect(found.pValue).toBeLessThan(0.05);
  expect(found.meanUncertainty).toBeCloseTo(18, 0);
});

test("the line does not mind where it is referred to", () => {
  const [a, b] = [calibrationLine(places, corrections, 20), calibrationLine(places, corrections, 24)];
  expect(correctionAt(a, 6).value).toBeCloseTo(correctionAt(b, 2).value, 12);
  expect(correctionAt(a, 6).standardUncertainty).toBeCloseTo(correctionAt(b, 2).standardUncertainty, 10);
});

test("what is refused", () => {
  expect(() => calibrationLine([1, 2], [1, 2], 0)).toThrow("places");
  expect(() => calibrationLine([1, 2, 3], [1, 2], 0)).toThrow("readings");
  expect(() => calibrationLine([2, 2, 2], [1, 2, 3], 0)).toThrow("no-variation");
  expect(() => dayToDay([1], [1], 5)).toThrow("means");
  expect(() => dayToDay([1, 2], [1], 5)).toThrow("sds");
  expect(() => dayToDay([1, 2], [1, 1], 1)).toThrow("perDay");
  expect(() => dayToDay([1, 2], [0, 0], 5)).toThrow("no-variation");
});
