import type { ImportProblem } from "../../../core/trial-import/plan-trial.ts";
import type { Role } from "../../../core/trial-import/roles.ts";
import { importing } from "./jar-import.ts";

const where = ({ row, column }: ImportProblem): string =>
  `Row ${row}${column === null ? "" : `, “${column}”`}`;

/** Somebody's trial, brought in from a table. */
export const trialImport = {
  title: "Bring in somebody’s trial",
  link: "Bring one in from a table",
  table: "Their table",
  tableSays:
    "A row for each reading: which patch, what was on it, and what was read. Nothing is written yet.",
  file: "Choose a file (CSV)",
  paste: "Or paste it",
  pasteHint: "The first line holds the headings.",
  noTable: {
    ...importing.noTable,
    empty: { heading: "There is no table yet", says: "Choose a file, or paste the table." },
    "no-rows": { heading: "Headings, but no row below them", says: "Each reading is a row of its own." },
  },
  roles: {
    patch: "the patch, or its code",
    value: "what was read",
    varies: "something that varied",
    board: "the board",
    plank: "the plank it came from",
    jar: "the jar",
    judge: "who read it",
    occasion: "which time it was read",
    coat: "after which coat",
    days: "days since the last coat",
  } satisfies Record<Role, string>,
  satOn: (header: string) => `“${header}” was chosen anew for each`,
  places: { jar: "jar", plank: "plank", board: "board", patch: "patch" },
  look: "What was read",
  lookName: "What it is called",
  unit: "Its unit",
  levels: "Its steps, from least to most",
  matters: "How large a difference would matter",
  mattersHint: "In its own unit; 5 gloss units are common practice.",
  mattersShare: "How much more often one stands above the other, from 0 to 1; 0.3 is usual here.",
  mattersWrong: "A number above 0 would do, as 5.",
  shareWrong: "A number between 0 and 1 would do, as 0.3.",
  called: "What the trial is called",
  calledFirst: (name: string) => `Somebody’s trial of ${name}`,
  problemsHeading: (n: number) => (n === 1 ? "One thing does not fit" : `${n} things do not fit`),
  more: (n: number) => `and ${n} more`,
  problem: (p: ImportProblem): string => {
    switch (p.why) {
      case "no-patch-column":
        return "No column says which patch was read. Which one is it?";
      case "no-value-column":
        return "No column holds what was read. Which one is it?";
      case "nothing-varies":
        return "No column says what varied. Which one is it?";
      case "no-patch":
        return `${where(p)}: no patch is named.`;
      case "no-level":
        return `${where(p)}: the cell is empty; what was it?`;
      case "not-a-number":
        return `${where(p)}: “${p.value}” is not a number.`;
      case "not-on-the-scale":
        return `${where(p)}: “${p.value}” is none of the steps.`;
      case "another-recipe":
        return `${where(p)}: patch ${p.value} had something else in an earlier row.`;
      case "another-board":
        return `${where(p)}: patch ${p.value} lay on another board in an earlier row.`;
    }
  },
  found: "What it comes to",
  comesTo: (patches: number, boards: number, jars: number, readings: number) =>
    `${patches} patches on ${boards} ${boards === 1 ? "board" : "boards"}, ${jars} ${jars === 1 ? "jar" : "jars"}, ${readings} readings.`,
  varied: (name: string, levels: readonly string[]) => `${name}: ${levels.join(", ")}.`,
  oneJarEach:
    "No column names the jars, so one of each recipe is taken: what is said is said of these jars, not of the recipes.",
  nothingBlind: "Whether it was judged blind is not known; the verdict takes it for not blind.",
  act: (readings: number) => (readings === 0 ? "Bring it in" : `Bring in ${readings} readings`),
};
