// Looks for what the docstrings of the core's formulas lack. Ends with `N passed, N failed`.
import { readFileSync } from "node:fs";
import { relative } from "node:path";
import { exportedFunctions, sourcesUnder } from "./docs/exported-functions.mjs";
import { missingFields, unitTypesIn } from "./docs/missing-fields.mjs";
import { root } from "./house/root.mjs";

const core = `${root}/src/core`;
/** Records and doors, not formulas: there the types and the schemas say what a thing is. */
const notFormulas = ["registry", "notebook", "views"];

const unitTypes = unitTypesIn(readFileSync(`${core}/units.ts`, "utf8"));
const isFormula = ({ file }) => {
  const [folder, ...rest] = relative(core, file).split("/");
  return rest.length > 0 && !notFormulas.includes(folder);
};

let passed = 0;
let failed = 0;
for (const { file, text } of sourcesUnder(core).filter(isFormula)) {
  for (const found of exportedFunctions(file, text)) {
    const missing = missingFields(found, unitTypes);
    if (missing.length === 0) passed++;
    else {
      failed++;
      console.log(
        `${relative(root, file)}:${found.line} ${found.name}: the docstring lacks ${missing.join(", ")}`,
      );
    }
  }
}
console.log(`${passed} passed, ${failed} failed`);
if (failed > 0) process.exitCode = 1;
