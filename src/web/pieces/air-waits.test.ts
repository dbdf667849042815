import { expect, test } from "vitest";
import { celsius, kelvinFromCelsius } from "../../core/units.ts";
import { coatsInAir, withWaits } from "./air-waits.ts";
import { draftsOf } from "./step-draft.ts";

const none = () => ({ millilitresPerM2: null, minutesPerM2: null }) as never;
const steps = draftsOf("brushed", none);
const ethanol = { alcohol: "ethanol", volumeFraction: 0.95 } as const;
const kelvin = kelvinFromCelsius(celsius(20));
const air = { temperature: kelvin, wood: kelvin, relativeHumidity: 0.5 };

test("each coat is asked for as it lies on those before it", () => {
  const coats = coatsInAir(steps, ethanol, air);
  expect(coats.map((coat) => coat.step)).toEqual(
    steps.flatMap((step, i) => (step.what === "coat" ? [i] : [])),
  );
  // Brushed: 114 mL a square metre, all of which stays (common practice), is 114 µm wet.
  expect(coats[1]?.setup.applied.thickness).toBeCloseTo(114e-6, 8);
  // By hand from published solids of 9.0 % at 1 lb and 16.6 % at 2 lb: the last of two brushed coats lies on a sealing coat of
  // 137 µm wet and one before it, 12.3 + 18.9 µm.
  expect((coats[1]?.setup.applied.beneath ?? 0) * 1e6).toBeCloseTo(31.2, 0);
  expect(coats[0]?.setup.applied.beneath).toBe(0);
});

test("waits go to their coats, rounded up to five minutes; a coat that does not dry keeps its own", () => {
  const coats = coatsInAir(steps, ethanol, air);
  const taken = withWaits(steps, coats, [76.2, null]);
  const [seal, ...others] = taken.filter((step) => step.what === "coat");
  expect(seal?.least).toBe("1 h 20 min");
  expect(others.map((step) => step.least)).toEqual(
    steps
      .filter((step) => step.what === "coat")
      .slice(1)
      .map((step) => step.least),
  );
});

test("a liquid that is no coat at all, or thicker than the model takes, is left out", () => {
  const thick = steps.map((step) => (step.what === "coat" ? { ...step, perM2: "900" } : step));
  expect(coatsInAir(thick, ethanol, air)).toEqual([]);
});
