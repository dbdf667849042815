import { formatNumber } from "../core/quantity/format-quantity.ts";
import { poundsPerUsGallon } from "../core/registry/cut-names.ts";
import { airFromOptions, airOptions, celsiusOf, micrometresOf, needed } from "./air-options.ts";
import { defineCommand } from "./command.ts";
import { given, liquidOptions, runCalculation, ShopOptions } from "./shop-options.ts";
import { percent, tableText } from "./shop-words.ts";

interface Help {
  readonly change: string;
  readonly woodC?: number;
  readonly relativeHumidity?: number;
  readonly wetUm?: number;
  readonly nButanolMassShare?: number;
  readonly blush: string;
}
interface Dried {
  readonly touchDryMin: number | null;
  readonly recoatMin: number | null;
  readonly goneMin: number | null;
  readonly dryUm: number;
  readonly lowestSurfaceC: number;
  readonly dewPointC: number | null;
  readonly waterShareAtSet: number | null;
  readonly blush: string | null;
  readonly blushMarginC: number | null;
  readonly wouldHelp: readonly Help[] | null;
  readonly flags: readonly { readonly message: string }[];
}

const strengthFields = ["massFraction", "volumeFraction", "usProof"];
const optionOf: Readonly<Record<string, string>> = {
  "film.wetUm": "--wet",
  "film.cutLbPerGal": "--cut",
  "film.beneathUm": "--beneath",
  "film.solvent": "--alcohol",
  "film.solvent.alcohol": "--alcohol",
  ...Object.fromEntries(strengthFields.map((f) => [`film.solvent.${f}`, "--strength"])),
  "air.temperatureC": "--air",
  "air.relativeHumidity": "--humidity",
  "air.speedMS": "--speed",
  "wood.temperatureC": "--wood",
};

const degrees = (c: number): string => `${formatNumber(c, 3)} °C`;
const wait = (minutes: number): string =>
  minutes < 90 ? `${formatNumber(minutes, 2)} min` : `${formatNumber(minutes / 60, 2)} h`;

const helps: Readonly<Record<string, (help: Help) => string>> = {
  "warmer wood": (h) => `the wood at ${degrees(h.woodC ?? Number.NaN)}`,
  "drier air": (h) => `air of ${percent(h.relativeHumidity ?? Number.NaN)}`,
  "thinner coat": (h) => `a coat of ${formatNumber(h.wetUm ?? Number.NaN, 3)} µm`,
  "slower alcohol": (h) => `${percent(h.nButanolMassShare ?? Number.NaN)} of n-butanol in it`,
};

function blushWords(found: Dried): string[][] {
  if (found.blush === null) return [];
  const margin = found.blushMarginC;
  const spare =
    margin === null
      ? ""
      : margin >= 0
        ? `; ${degrees(margin)} to spare`
        : `; ${degrees(-margin)} too near to the dew point`;
  const lines = (found.wouldHelp ?? []).map((h) => {
    const enough = h.blush === "unlikely" ? "unlikely then" : `${h.blush} still, but less so`;
    return ["", `${helps[h.change]?.(h) ?? h.change}: ${enough}`];
  });
  return [["white", `${found.blush}${spare}`], ...lines];
}

function words(found: Dried): string {
  const dew = found.dewPointC === null ? "" : `; water condenses below ${degrees(found.dewPointC)}`;
  const rows: string[][] = [
    ...(found.touchDryMin === null ? [] : [["touch", `dry after ${wait(found.touchDryMin)}`]]),
    ...(found.recoatMin === null ? [] : [["coat", `the next after ${wait(found.recoatMin)}`]]),
    ...(found.goneMin === null ? [] : [["gone", `after ${wait(found.goneMin)}`]]),
    ["coldest", `${degrees(found.lowestSurfaceC)} at the surface${dew}`],
    ...(found.waterShareAtSet === null
      ? []
      : [["water", `${percent(found.waterShareAtSet)} of what is still liquid when it sets`]]),
    ...blushWords(found),
    ...(found.dryUm > 0 ? [["dry", `${formatNumber(found.dryUm, 3)} µm`]] : []),
  ];
  return tableText(rows);
}

const estimate =
  "Figures are estimates, by physics and by what is common practice; your own boards know better.";

export const command = defineCommand({
  usage: "dry --wet 100um --cut 2lb --strength 95% --air 20C --humidity 50%",
  positionals: 0,
  options: {
    wet: { type: "string", value: "100um", description: "thickness of the wet coat: µm or mil" },
    cut: { type: "string", value: "2lb", description: "its cut" },
    beneath: { type: "string", value: "20um", description: "dry film that it goes on" },
    ...airOptions,
    speed: { type: "string", value: "0.1", description: "of the draught, m/s; 0.1 in a closed room" },
    wood: { type: "string", value: "18C", description: "temperature of the wood; as the air unless told" },
    alcohol: liquidOptions.alcohol,
    strength: liquidOptions.strength,
    gallon: liquidOptions.gallon,
  },
  run({ values }, effects) {
    const typed = new ShopOptions(values);
    const air = airFromOptions(typed);
    const film = {
      wetUm: needed(micrometresOf(typed, "wet"), "wet", "100um"),
      cutLbPerGal: poundsPerUsGallon(needed(typed.cut("cut"), "cut", "2lb")),
      solvent: typed.liquid(),
      ...given({ beneathUm: micrometresOf(typed, "beneath") }),
    };
    const wood = { temperatureC: celsiusOf(typed, "wood") ?? air.temperatureC };
    const found = runCalculation<Dried>("drying", { film, air, wood, whatWouldHelp: true }, optionOf);
    if (values.json === true) return effects.stdout(`${JSON.stringify(found, null, 2)}\n`);
    const notes = [...typed.notes, ...found.flags.map((f) => f.message), estimate];
    effects.stdout(`${words(found)}\n${notes.map((note) => `${note}\n`).join("")}`);
  },
});
