import Papa from "papaparse";
import { calculate } from "../core/registry/calculation.ts";
import { layoutCalculation } from "../core/registry/design.ts";
import { readJson } from "../core/registry/read-json.ts";
import { refused } from "./cli-error.ts";
import { defineCommand } from "./command.ts";
import { tableText } from "./shop-words.ts";

interface Laid {
  readonly patches: readonly {
    readonly patch: string;
    readonly board: string;
    readonly place: number;
    readonly treatment: Readonly<Record<string, string>>;
    readonly jar: string;
    readonly code: string;
    readonly order: readonly number[];
  }[];
  readonly cannotTell: readonly { readonly term: string; readonly with: readonly string[] }[];
  readonly smallestDifference: readonly {
    readonly factor: string;
    readonly value: number | null;
    readonly about: string;
  }[];
}

export const command = defineCommand({
  usage: "layout [PLAN.json]",
  positionals: 1,
  options: {
    csv: { type: "boolean", description: "the patches as a table in CSV" },
    blind: { type: "boolean", description: "without what is on each code, for whoever judges" },
  },
  async run({ values, positionals }, effects) {
    const [file] = positionals;
    const input = readJson(file === undefined ? await effects.stdin() : effects.readFile(file));
    if (!input.ok) throw refused(input.error);
    const answer = calculate(layoutCalculation, input.value);
    if (!answer.ok) throw refused(answer.error);
    const laid = answer.value as Laid; // what this calculation gives
    const patches = values.blind === true ? laid.patches.map(withoutTreatment) : laid.patches.map(rowOf);
    if (values.json === true)
      effects.stdout(`${JSON.stringify(values.blind === true ? { ...laid, patches } : laid, null, 2)}\n`);
    else if (values.csv === true)
      effects.stdout(`${Papa.unparse(patches, { newline: "\n", escapeFormulae: true })}\n`);
    else
      effects.stdout(
        `${tableText([Object.keys(patches[0] ?? {}), ...patches.map(cells)])}\n${inWords(laid)}`,
      );
  },
});

type Row = Readonly<Record<string, string | number>>;

const cells = (row: Row): string[] => Object.values(row).map(String);

const turns = (order: readonly number[]): Row =>
  Object.fromEntries(order.map((turn, i) => [`turn${i + 1}`, turn]));

const withoutTreatment = (p: Laid["patches"][number]): Row => ({
  patch: p.patch,
  board: p.board,
  place: p.place,
  code: p.code,
  ...turns(p.order),
});

const rowOf = (p: Laid["patches"][number]): Row => ({
  patch: p.patch,
  board: p.board,
  place: p.place,
  code: p.code,
  jar: p.jar,
  ...p.treatment,
  ...turns(p.order),
});

function inWords(laid: Laid): string {
  const alike = laid.cannotTell.map((c) => `It cannot tell ${c.term} apart from ${c.with.join(", ")}.\n`);
  const shows = laid.smallestDifference.map((s) =>
    s.value === null
      ? `Nothing is left over to judge ${s.factor} by.\n`
      : `It can show a difference of ${s.value.toPrecision(2)} in ${s.factor}${s.about === s.factor ? "" : ` (${s.about})`}, four times in five.\n`,
  );
  return [...alike, ...shows].join("");
}
