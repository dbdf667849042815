import { Notebook } from "../core/notebook/notebook.ts";
import { readKeptEntry } from "../core/notebook/parse-entry.ts";
import { formatQuantity, formatUncertain } from "../core/quantity/format-quantity.ts";
import { poundsPerUsGallon } from "../core/registry/cut-names.ts";
import { type JarView, jarFitness, jarIds, jarView } from "../core/views/jar.ts";
import { refused } from "./cli-error.ts";
import { defineCommand } from "./command.ts";
import { dataOption, notebookAsked, textsOf, withNotebooks } from "./data-folder.ts";
import { importJars, importOptions } from "./jars-import.ts";
import { percent, tableText } from "./shop-words.ts";

const dayMs = 86_400_000;

interface ListedJar {
  readonly id: string;
  readonly code: string;
  readonly resins: readonly string[];
  readonly solvents: readonly string[];
  readonly cutLbPerGal: number | null;
  readonly cutStandardUncertainty: number | null;
  readonly waterMassFraction: number | null;
  /** Of the oldest resin in it. */
  readonly ageDays: number | null;
  readonly state: "use" | "test first" | "discard" | "empty";
  readonly because: string;
  readonly leftMl: number | null;
  readonly leftG: number | null;
}

function listed(read: Notebook, jar: JarView, now: string): ListedJar {
  const fitness = jarFitness(read, jar.id, now);
  const known = jar.known ? jar : null;
  return {
    id: jar.id,
    code: jar.code,
    resins: jar.resins.map(({ name }) => name),
    solvents: jar.solvents.map(({ name }) => name),
    cutLbPerGal: known?.cut == null ? null : poundsPerUsGallon(known.cut.value),
    cutStandardUncertainty: known?.cut == null ? null : poundsPerUsGallon(known.cut.standardUncertainty),
    waterMassFraction: known?.waterShare ?? null,
    ageDays: jar.resinSince === null ? null : (Date.parse(now) - Date.parse(jar.resinSince)) / dayMs,
    state: jar.emptied === null ? fitness.state : "empty",
    because: fitness.because,
    leftMl: known === null ? null : known.volume.value * 1e6,
    leftG: known === null ? null : known.mass.value * 1e3,
  };
}

const unitsOf = { metric: { ml: "ml", g: "g" }, us: { ml: "floz-us", g: "oz" } } as const;
type ShopUnits = keyof typeof unitsOf;

function shopUnits(text = "metric"): ShopUnits {
  if (text === "metric" || text === "us") return text;
  const message = `--units is ${text}: metric or us would do.`;
  throw refused({
    code: "unknown-name",
    field: "--units",
    message,
    value: text,
    limits: { allowed: ["metric", "us"] },
  });
}

function cutText({ cutLbPerGal, cutStandardUncertainty }: ListedJar): string {
  if (cutLbPerGal === null) return "not known";
  const { value, uncertainty } = formatUncertain(cutLbPerGal, cutStandardUncertainty ?? 0);
  return `${value} lb ± ${uncertainty}`;
}

function rowOf(jar: ListedJar, units: ShopUnits): readonly string[] {
  const { ml, g } = unitsOf[units];
  const left =
    jar.leftMl === null || jar.leftG === null
      ? "not known"
      : `${formatQuantity(jar.leftMl / 1e6, ml)}, ${formatQuantity(jar.leftG / 1e3, g)}`;
  return [
    jar.code,
    `${jar.resins.join(" + ") || "?"} in ${jar.solvents.join(" + ") || "?"}`,
    cutText(jar),
    jar.waterMassFraction === null ? "not known" : percent(jar.waterMassFraction),
    jar.ageDays === null ? "not known" : `${Math.floor(jar.ageDays)} days`,
    jar.state === "empty" ? "empty" : `${jar.state} (${jar.because.replaceAll("-", " ")})`,
    left,
  ];
}

const heading = ["jar", "what", "cut", "water", "age", "state", "left"];

/** The notebook folded, from its entries as they are kept. */
function notebookFrom(id: string, texts: readonly string[]): Notebook {
  const notebook = new Notebook(id);
  notebook.add(texts.map(readKeptEntry).flatMap((kept) => (kept.ok ? [kept.value] : [])));
  return notebook;
}

export const command = defineCommand({
  usage: "jars [NOTEBOOK] [--import FILE.csv --dry-run]",
  positionals: 1,
  options: {
    ...dataOption,
    all: { type: "boolean", description: "emptied jars too" },
    units: { type: "string", value: "metric", description: "of what is left: metric (unless told) or us" },
    now: {
      type: "string",
      value: "INSTANT",
      description: "when to judge age and state at, UTC; now unless told",
    },
    ...importOptions,
  },
  async run({ values, positionals }, effects) {
    const units = shopUnits(values.units);
    const now = values.now ?? new Date().toISOString();
    await withNotebooks({ data: values.data, mayBegin: false }, effects, async (store) => {
      const id = await notebookAsked(store, positionals[0]);
      const notebook = notebookFrom(id, await textsOf(store, id));
      if (values.import !== undefined) return importJars({ values, notebook, store, now }, effects);
      const jars = jarIds(notebook)
        .flatMap((jar) => jarView(notebook, jar) ?? [])
        .map((jar) => listed(notebook, jar, now))
        .filter((jar) => values.all === true || jar.state !== "empty");
      if (values.json === true) return effects.stdout(`${JSON.stringify(jars, null, 2)}\n`);
      if (jars.length === 0) return effects.stderr("There are no jars in this notebook.\n");
      effects.stdout(tableText([heading, ...jars.map((jar) => rowOf(jar, units))]));
      effects.stderr(
        "Cuts in lb to a US gallon of solvent, ± one standard uncertainty. Estimates, not a clearance.\n",
      );
    });
  },
});
