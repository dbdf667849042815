import Papa from "papaparse";
import { stagesFor } from "../core/design/foresight/stages.ts";
import { layoutKinds } from "../core/design/plan.ts";
import { calculate } from "../core/registry/calculation.ts";
import { layoutCalculation, planOf } from "../core/registry/design.ts";
import { refused } from "./cli-error.ts";
import { defineCommand } from "./command.ts";
import { planFromText } from "./plan-from-text.ts";
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
  readonly sameThing: readonly {
    readonly effect: readonly string[];
    readonly with: readonly (readonly string[])[];
  }[];
  readonly smallestDifference: readonly Shown[];
  readonly responses: readonly { readonly name: string; readonly smallestDifference: readonly Shown[] }[];
  readonly worst: {
    readonly fault: { readonly kind: string; readonly factor: string };
    readonly mend: {
      readonly change: string;
      readonly jarsPerLevel: number;
      readonly boards: readonly unknown[];
    } | null;
  } | null;
  readonly takes?: {
    readonly millilitres: number;
    readonly jars: number;
    readonly hours: number;
    readonly evenings: number;
  };
}

interface Shown {
  readonly factor: string;
  readonly value: number | null;
  readonly about: string;
}

export const command = defineCommand({
  usage: "layout [PLAN.json | BOARDS.csv --vary alcohol=ethanol,isopropanol --applied alcohol=jar]",
  positionals: 1,
  options: {
    vary: {
      type: "string",
      multiple: true,
      value: "FACTOR=a,b",
      description: "what varies, with its levels; once for each",
    },
    applied: {
      type: "string",
      multiple: true,
      value: "FACTOR=jar",
      description: "what a factor sits on: jar, plank, board or patch; once for each",
    },
    twice: {
      type: "string",
      multiple: true,
      value: "FACTOR=a",
      description: "a level that stands twice as often, as a control",
    },
    jars: { type: "string", value: "2", description: "jars mixed apart of each recipe; 1 unless told" },
    sessions: {
      type: "string",
      value: "4",
      description: "sittings, each with an order of its own; 1 unless told",
    },
    kind: {
      type: "string",
      value: "every-board",
      description: `how the boards are used: ${layoutKinds.join(", ")}`,
    },
    noise: {
      type: "string",
      value: "3,1,2",
      description: "how far like patches, jars and planks lie apart, one standard deviation",
    },
    matters: { type: "string", value: "5", description: "the difference that matters, in the same unit" },
    seed: { type: "string", value: "abc", description: "the lot: the same seed gives the same layout" },
    csv: { type: "boolean", description: "the patches as a table in CSV" },
    blind: { type: "boolean", description: "without what is on each code, for whoever judges" },
  },
  async run({ values, positionals }, effects) {
    const [file] = positionals;
    const text = file === undefined ? await effects.stdin() : effects.readFile(file);
    const input = planFromText(text, file ?? "the input", values);
    const answer = calculate(layoutCalculation, input);
    if (!answer.ok) {
      effects.stderr(stagesInWords(input));
      throw refused(answer.error);
    }
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

/** For a grid that is too large for its boards: what to ask first, and what after it. Nothing where that does not help. */
function stagesInWords(input: unknown): string {
  const read = layoutCalculation.input.safeParse(input);
  const stages = read.success ? (stagesFor(planOf(read.data)) ?? []) : [];
  const says = {
    screen: (upTo: number) => `first ${upTo} things at the two levels furthest apart (kind "screen")`,
    refine: (upTo: number) => `then the ${upTo} that matter most, at all their levels`,
  };
  return stages
    .map(
      ({ stage, upTo, patches }) =>
        `In two stages it would fit: ${says[stage](upTo)}, in ${patches} patches.\n`,
    )
    .join("");
}

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

const together = (names: readonly string[]): string =>
  names.length === 1 ? (names[0] ?? "") : `${names.join(" with ")}`;

const shownWords = (shown: readonly Shown[], of: string): string[] =>
  shown.map((s) =>
    s.value === null
      ? `Nothing is left over to judge ${s.factor} by.`
      : `It can show a difference of ${s.value.toPrecision(2)}${of} in ${s.factor}${s.about === s.factor ? "" : ` (${s.about})`}, four times in five.`,
  );

function mendWords(worst: Laid["worst"]): string[] {
  if (worst === null) return [];
  const { mend } = worst;
  if (mend === null) return ["No larger plan that was tried mends it: ask less at once."];
  const how = {
    jars: `${mend.jarsPerLevel} jars of each recipe`,
    planks: "a plank for each board",
    boards: `${mend.boards.length} boards`,
    "jars and boards": `${mend.jarsPerLevel} jars of each recipe on ${mend.boards.length} boards`,
  };
  return [`To mend the worst of it: ${how[mend.change as keyof typeof how]}.`];
}

function inWords(laid: Laid): string {
  const { takes } = laid;
  return [
    ...laid.cannotTell.map((c) => `It cannot tell ${c.term} apart from ${c.with.join(", ")}.`),
    ...laid.sameThing.map(
      (s) => `${together(s.effect)} is seen only together with ${s.with.map(together).join(", ")}.`,
    ),
    ...shownWords(laid.smallestDifference, ""),
    ...laid.responses.flatMap((r) => shownWords(r.smallestDifference, ` of ${r.name}`)),
    ...mendWords(laid.worst),
    ...(takes === undefined
      ? []
      : [
          `It takes ${Math.ceil(takes.millilitres)} mL in ${takes.jars} jars, ${takes.hours.toFixed(1)} hours and ${takes.evenings} evenings.`,
        ]),
  ]
    .map((line) => `${line}\n`)
    .join("");
}
