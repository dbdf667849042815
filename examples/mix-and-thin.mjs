// What 57 g of flakes and 95 % ethanol make as a 2 lb cut, and what thins half a litre of it to 1 lb.
import { calculate, calculationNamed } from "lacbench/core";

function answer(name, input) {
  const result = calculate(calculationNamed(name), input);
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
}

const solvent = { alcohol: "ethanol", volumeFraction: 0.95 };
const mix = answer("mix", { resinG: 57, cutLbPerGal: 2, solvent });
console.log(
  `57 g of flakes in ${mix.solventMl.toFixed(0)} mL of alcohol make ${mix.solutionMl.toFixed(0)} mL.`,
);

const stock = { solutionMl: 500, cutLbPerGal: 2, solvent };
const thin = answer("thin", { stock, toCutLbPerGal: 1, with: solvent });
console.log(
  `500 mL of it and ${thin.addMl.toFixed(0)} mL of alcohol make ${thin.resultMl.toFixed(0)} mL of 1 lb.`,
);
