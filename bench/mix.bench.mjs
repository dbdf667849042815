// A full mix with its uncertainty through the registry once it is warm (20 000 calls), and the same drawn 10 000 times.
import { calculate } from "../dist/core/registry/calculation.js";
import { mix } from "../dist/core/registry/mix.js";
import { medianOf } from "./median.mjs";

const given = { resinG: 57, cutLbPerGal: 2, solvent: { alcohol: "ethanol", volumeFraction: 0.95 } };
const many = {
  ...given,
  temperatureC: 23,
  resins: [{ moistureMassFraction: 0.02 }],
  monteCarlo: { draws: 10_000, seed: "bench" },
};

const timed = (input) => {
  const start = performance.now();
  if (!calculate(mix, input).ok) throw new Error("the mix was refused");
  return performance.now() - start;
};

export async function figures() {
  for (let i = 0; i < 20_000; i++) timed(given);
  const once = await medianOf(5000, () => timed(given));
  for (let i = 0; i < 5; i++) timed(many);
  return [
    {
      name: "a full mix with its uncertainty, median of 5000",
      value: 1e3 * once,
      unit: "µs",
      atMost: 50,
    },
    {
      name: "the same with 10 000 draws, median of 25",
      value: await medianOf(25, () => timed(many)),
      unit: "ms",
      atMost: 50,
    },
  ];
}
