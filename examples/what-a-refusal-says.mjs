// Every door refuses in one shape: a code, the field, a sentence, the value, and what would do.
import { calculate, calculationNamed } from "lacbench/core";

const input = { resinG: -5, cutLbPerGal: 2, solvent: { alcohol: "ethanol" } };
const result = calculate(calculationNamed("mix"), input);
if (result.ok) throw new Error("less than nothing cannot be weighed in");
console.log(result.error);
