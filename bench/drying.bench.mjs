// A film of six components followed for 12 hours, and the live margin of a bench of twelve jars in one shop's air.
import { blushOfSetup } from "../dist/core/evaporation/blush.js";
import { dryFilm } from "../dist/core/evaporation/drying.js";
import { medianOf } from "./median.mjs";

const zero = 273.15;
const six = {
  ethanol: 0.6,
  isopropanol: 0.15,
  methanol: 0.05,
  "n-propanol": 0.08,
  "n-butanol": 0.06,
  water: 0.06,
};
const jars = Array.from({ length: 12 }, (_, i) => ({
  ethanol: 0.9 - i / 100,
  isopropanol: 0.04,
  water: 0.06 + i / 100,
}));

const setup = (composition, cut) => ({
  applied: { composition, thickness: 100e-6, cut: cut * 119.826, partialDensity: 1205 },
  liquidTemperature: zero + 18,
  air: { temperature: zero + 20, relativeHumidity: 0.55, pressure: 101_325, speed: 0.1 },
  length: 0.3,
  wood: { temperature: zero + 18, thickness: 0.02, density: 600 },
  radiation: true,
  seconds: 12 * 3600,
});

const timed = (work) => {
  const start = performance.now();
  work();
  return performance.now() - start;
};

export async function figures() {
  const whole = setup(six, 1.5);
  const shelf = jars.map((composition, i) => setup(composition, 1 + i / 12));
  const run = () => {
    if (dryFilm(whole).touchDry === null) throw new Error("the film did not dry");
  };
  const margins = () => {
    if (shelf.map(blushOfSetup).some((blush) => blush === undefined)) throw new Error("a jar was not judged");
  };
  for (let i = 0; i < 20; i++) run();
  return [
    {
      name: "six components, 12 hours, median of 50",
      value: await medianOf(50, () => timed(run)),
      unit: "ms",
      atMost: 20,
    },
    {
      name: "the margin of twelve jars, median of 20",
      value: await medianOf(20, () => timed(margins)),
      unit: "ms",
      atMost: 100,
    },
  ];
}
