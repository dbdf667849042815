// A film of six components, and a bench of twelve jars in one shop's air: the same in Node and in a browser.
const zero = 273.15;
const setup = (composition, cut) => ({
  applied: { composition, thickness: 100e-6, cut: cut * 119.826, partialDensity: 1205 },
  liquidTemperature: zero + 18,
  air: { temperature: zero + 20, relativeHumidity: 0.55, pressure: 101_325, speed: 0.1 },
  length: 0.3,
  wood: { temperature: zero + 18, thickness: 0.02, density: 600 },
  radiation: true,
  seconds: 12 * 3600,
});

export const six = setup(
  {
    ethanol: 0.6,
    isopropanol: 0.15,
    methanol: 0.05,
    "n-propanol": 0.08,
    "n-butanol": 0.06,
    water: 0.06,
  },
  1.5,
);
export const twelve = Array.from({ length: 12 }, (_, i) =>
  setup({ ethanol: 0.9 - i / 100, isopropanol: 0.04, water: 0.06 + i / 100 }, 1 + i / 12),
);
