import { readJson } from "../core/registry/read-json.ts";
import { refused } from "./cli-error.ts";
import { byFactor, numberOption, optionRefused, type Values } from "./factor-options.ts";
import { type Cells, readTable } from "./read-table.ts";

const columns = ["board", "plank", "wood", "patches"] as const;

/** A plan in JSON as the calculation takes it, or a table of boards with what varies in the options. */
export function planFromText(text: string, file: string, values: Values): unknown {
  if (/^\s*[[{]/.test(text)) {
    const input = readJson(text);
    if (!input.ok) throw refused(input.error);
    return input.value;
  }
  const boards = readTable(text, file, ["board", "patches"], columns).rows.map(boardOf);
  const woods = [...new Set(boards.map((b) => b.wood))];
  const [jarsPerLevel, sessions] = [numberOption(values, "jars", "2"), numberOption(values, "sessions", "4")];
  return {
    ...(values.kind === undefined ? {} : { kind: values.kind }),
    factors: [
      ...factorsIn(values),
      ...(woods.length > 1 ? [{ name: "wood", levels: woods, appliedTo: "plank" }] : []),
    ],
    boards,
    moreOften: [...byFactor(values, "twice", "alcohol=ethanol")].map(([factor, level]) => ({
      what: { [factor]: level },
      times: 2,
    })),
    ...(jarsPerLevel === undefined ? {} : { jarsPerLevel }),
    ...(sessions === undefined ? {} : { sessions }),
    ...responsesIn(values),
    seed: values.seed ?? "1",
  };
}

function factorsIn(values: Values): readonly unknown[] {
  const applied = byFactor(values, "applied", "alcohol=jar");
  const factors = byFactor(values, "vary", "alcohol=ethanol,isopropanol");
  if (factors.size === 0)
    throw refused({
      code: "missing",
      field: "--vary",
      message: "--vary is needed. alcohol=ethanol,isopropanol would do.",
      value: null,
      limits: null,
    });
  return [...factors].map(([name, levels]) => ({
    name,
    levels: levels.split(",").map((level) => level.trim()),
    appliedTo: applied.get(name) ?? "patch",
  }));
}

/** A board of its own plank unless told. */
const boardOf = (cells: Cells) => {
  const told = (column: (typeof columns)[number], otherwise: string) => cells[column]?.trim() || otherwise;
  const board = told("board", "");
  return {
    board,
    plank: told("plank", board),
    wood: told("wood", "wood"),
    patches: Number(told("patches", "")),
  };
};

function responsesIn(values: Values): object {
  if (values.noise === undefined) return {};
  const [patch, jar = 0, plank = 0, ...rest] = String(values.noise).split(",").map(Number);
  if (patch === undefined || rest.length > 0 || ![patch, jar, plank].every(Number.isFinite))
    throw optionRefused("noise", values.noise, "3,1,2");
  const matters = numberOption(values, "matters", "5");
  const noise = { patch, jar, plank };
  return { responses: [{ name: "what is looked at", noise, ...(matters === undefined ? {} : { matters }) }] };
}
