import { calculationNamed, calculations } from "../../core/registry/all.ts";
import type { Calculation } from "../../core/registry/calculation.ts";
import { isListed, pathsIn } from "../reference/fields.ts";
import { exampleOutput, readSection, referencePage } from "../reference/page.ts";
import { commandDoor, type Door, functionDoor, keptReferencePage, ServerDoor } from "./doors.ts";
import type { ToleranceTable } from "./tolerance.ts";
import { type CheckCase, type Json, NotReadable, type Topic } from "./topic.ts";

const server = new ServerDoor();
const doors: Readonly<Record<string, Door>> = {
  function: functionDoor,
  "command line": commandDoor,
  HTTP: server.run,
};

const isObject = (x: unknown): x is Json => typeof x === "object" && x !== null && !Array.isArray(x);

function known(name: string): Calculation {
  const calculation = calculationNamed(name);
  if (calculation === undefined) throw new NotReadable(`the calculation ${name} is not known`);
  return calculation;
}

/** The fourth door: what the page prints of a calculation is what it gives now, and every field of the case is on it. */
function onThePage(calculation: Calculation, input: unknown): Json {
  const printed = readSection(keptReferencePage(), calculation.name);
  const current = readSection(referencePage(calculations), calculation.name);
  return {
    asNewAsTheCalculation: printed !== undefined && printed.text === current?.text,
    exampleHolds: JSON.stringify(printed?.output) === JSON.stringify(exampleOutput(calculation)),
    fieldsNotOnIt: pathsIn(input).filter((path) => !isListed(path, printed?.fields ?? [])),
  };
}

const pageCase = (id: string, name: string, input: unknown): CheckCase => ({
  id: `${id}, reference page`,
  expected: { asNewAsTheCalculation: true, exampleHolds: true, fieldsNotOnIt: [] },
  tol: {},
  compute: () => onThePage(known(name), input),
});

export const topic: Topic = {
  wholeFile(file, content) {
    const { calculation: name, input, output, tolerance } = content;
    if (
      typeof name !== "string" ||
      input === undefined ||
      !isObject(output) ||
      Object.keys(output).length === 0
    )
      throw new NotReadable("a calculation, its input and its output are needed");
    const tol = (isObject(tolerance) ? tolerance : {}) as ToleranceTable;
    const throughDoors = Object.entries(doors).map(([door, run]) => ({
      id: `${file}, ${door}`,
      expected: output,
      tol,
      compute: () => run(known(name).name, input),
    }));
    return [...throughDoors, pageCase(file, name, input)];
  },
  close: () => server.close(),
};
