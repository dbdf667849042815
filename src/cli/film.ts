import { formatNumber } from "../core/quantity/format-quantity.ts";
import { poundsPerUsGallon } from "../core/registry/cut-names.ts";
import { micrometresOf, needed, plainNumber } from "./air-options.ts";
import { refused } from "./cli-error.ts";
import { defineCommand } from "./command.ts";
import { given, liquidOptions, runCalculation, ShopOptions } from "./shop-options.ts";
import { tableText } from "./shop-words.ts";

interface Built {
  readonly rubbingOut: {
    readonly toGoUm: number;
    readonly coatsToGo: number | null;
    readonly leavesUm: number;
    readonly risk: string;
  };
  readonly coats: readonly {
    readonly dryUm: number;
    readonly sunkUm: number;
    readonly filmUm: number;
    readonly gramsPerM2: number;
  }[];
  readonly dryUm: number;
  readonly equivalentCoats: readonly {
    readonly cutLbPerGal: number;
    readonly wetUm: number;
    readonly coats: number;
  }[];
}

const optionOf = {
  "coats[0].wetUm": "--wet",
  "coats[0].cutLbPerGal": "--cut",
  "coats[0].gramsPerM2": "--grams",
  "coats[0].transfer": "--stays",
  "rubOut.neededUm": "--needed",
  "sanded[0].afterCoat": "--sand",
  "sanded[0].removedUm": "--sand",
  coats: "--coats",
};
const milOfMicrometre = 1 / 25.4;
const thickness = (um: number): string =>
  `${formatNumber(um, 3)} µm (${formatNumber(um * milOfMicrometre, 2)} mil)`;

/** `3=5um`: after the third coat 5 µm came off. */
function sanding(text: string): Record<string, number> {
  const [coat = "", removed = ""] = text.split("=");
  const read = /^\s*([\d.]+)\s*(?:um|µm)?\s*$/.exec(removed);
  if (!/^\d+$/.test(coat.trim()) || read === null)
    throw refused({
      code: "not-a-number",
      field: "--sand",
      message: `--sand is ${text}. For instance --sand 3=5um would do: after coat 3, 5 µm came off.`,
      value: text,
      limits: null,
    });
  return { afterCoat: Number(coat), removedUm: Number(read[1]) };
}

const risks: Readonly<Record<string, string>> = {
  "goes through": "rubbing it out now would cut through",
  "may go through": "rubbing it out now leaves too little",
  holds: "rubbing it out now leaves enough",
};

function rubbingWords({ rubbingOut }: Built): string {
  const { toGoUm, coatsToGo, leavesUm, risk } = rubbingOut;
  const more = coatsToGo === null ? "" : `, ${coatsToGo} more ${coatsToGo === 1 ? "coat" : "coats"}`;
  const missing =
    toGoUm === 0 ? "It is thick enough to rub out" : `To rub it out ${thickness(toGoUm)} are missing${more}`;
  return `${missing}; ${risks[risk] ?? risk}: ${formatNumber(leavesUm, 2)} µm. How thick is enough is common practice.`;
}

/** Grams spent on an area, by the square metre. */
function gramsPerM2(typed: ShopOptions): number | undefined {
  const area = typed.number("area", { dimensions: ["area"], bareUnit: "m2" });
  const grams = plainNumber(typed, "grams", "90");
  if (area === undefined) return grams;
  if (!(area > 0))
    throw refused({
      code: "out-of-range",
      field: "--area",
      message: "--area is nothing. The area that the grams went on would do, such as 0.1m2.",
      value: typed.text("area") ?? null,
      limits: { min: 0 },
    });
  return needed(grams, "grams", "9") / area;
}

function words(found: Built): string {
  const each = found.coats.map((c, i) => [
    `coat ${i + 1}`,
    `${thickness(c.dryUm)} dry`,
    `${thickness(c.filmUm)} in all`,
    `${formatNumber(c.gramsPerM2, 3)} g/m²`,
    ...(c.sunkUm > 0 ? [`${formatNumber(c.sunkUm, 2)} µm sank in`] : []),
  ]);
  const others = found.equivalentCoats.map((o) => [
    "or",
    `${formatNumber(o.coats, 2)} coats`,
    `of a ${formatNumber(o.cutLbPerGal, 2)} lb cut, ${formatNumber(o.wetUm, 3)} µm wet`,
  ]);
  return `${tableText([...each, ...others])}\n${rubbingWords(found)}\n`;
}

export const command = defineCommand({
  usage: "film --cut 2lb --wet 100um --coats 3",
  positionals: 0,
  options: {
    cut: { type: "string", value: "2lb", description: "of every coat" },
    wet: { type: "string", value: "100um", description: "thickness of a wet coat: µm or mil" },
    grams: {
      type: "string",
      value: "90",
      description: "liquid spent on the area in a coat, g; instead of --wet",
    },
    area: {
      type: "string",
      value: "0.1m2",
      description: "that --grams went on, weighed before and after; a square metre unless told",
    },
    bare: { type: "boolean", description: "on bare wood, into which the first coats sink" },
    needed: { type: "string", value: "76um", description: "film to rub out; 3 mil unless told" },
    coats: { type: "string", value: "3", description: "how many; one unless told" },
    stays: { type: "string", value: "60%", description: "share that stays on the work; all unless told" },
    sand: {
      type: "string",
      multiple: true,
      value: "3=5um",
      description: "after which coat how much came off; as often as it was",
    },
    gallon: liquidOptions.gallon,
  },
  run({ values }, effects) {
    const typed = new ShopOptions(values);
    const coat = {
      cutLbPerGal: poundsPerUsGallon(needed(typed.cut("cut"), "cut", "2lb")),
      ...given({
        wetUm: micrometresOf(typed, "wet"),
        gramsPerM2: gramsPerM2(typed),
        transfer: typed.number("stays", { dimensions: ["fraction"], bareUnit: "percent" }),
      }),
    };
    const count = plainNumber(typed, "coats", "3") ?? 1;
    if (!(Number.isInteger(count) && count >= 1 && count <= 500))
      throw refused({
        code: "out-of-range",
        field: "--coats",
        message: `--coats is ${count}. A whole number from 1 to 500 would do.`,
        value: count,
        limits: { min: 1, max: 500 },
      });
    const input = {
      coats: Array.from({ length: count }, () => coat),
      sanded: (values.sand ?? []).map(sanding),
      bareWood: values.bare === true,
      ...given({ rubOut: given({ neededUm: micrometresOf(typed, "needed") }) }),
    };
    const found = runCalculation<Built>("film-build", input, optionOf);
    if (values.json === true) return effects.stdout(`${JSON.stringify(found, null, 2)}\n`);
    effects.stdout(words(found));
  },
});
