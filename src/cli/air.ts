import { formatNumber } from "../core/quantity/format-quantity.ts";
import { airFromOptions, airOptions, celsiusOf, needed, plainNumber } from "./air-options.ts";
import { defineCommand } from "./command.ts";
import { given, liquidOptions, runCalculation, ShopOptions } from "./shop-options.ts";
import { percent, tableText } from "./shop-words.ts";

interface Dew {
  readonly dewPointC: number;
  readonly marginC: number;
  readonly wetBulbC: number | null;
  readonly flags: readonly { readonly message: string }[];
}
interface Moisture {
  readonly moisturePercent: number;
  readonly flags: readonly { readonly message: string }[];
}
interface Vapours {
  readonly components: readonly {
    readonly component: string;
    readonly peakPpm: number;
    readonly limitPpm: number;
    readonly limitBody: string;
    readonly limitYear: number;
    readonly minutesAboveLimit: number | null;
    readonly shareOfLowerFlammableLimit: number;
  }[];
  readonly mixtureShareOfLowerFlammableLimit: number;
  readonly minutesAboveQuarterFlammable: number | null;
  readonly ventilationM3PerH: number;
  readonly statement: string;
  readonly flags: readonly { readonly message: string }[];
}

const optionOf = {
  temperatureC: "--air",
  relativeHumidity: "--humidity",
  surfaceC: "--wood",
  amountMl: "--amount",
  minutes: "--minutes",
  "room.volumeM3": "--room",
  "room.airChangesPerHour": "--changes",
  solvent: "--alcohol",
  "solvent.alcohol": "--alcohol",
  "solvent.massFraction": "--strength",
  "solvent.volumeFraction": "--strength",
  "solvent.usProof": "--strength",
};

const degrees = (c: number): string => `${formatNumber(c, 3)} °C`;

function airWords(dew: Dew, moisture: Moisture): string[][] {
  const above =
    dew.marginC >= 0 ? `${degrees(dew.marginC)} above it` : `${degrees(-dew.marginC)} below it: wet`;
  return [
    ["dew", `${degrees(dew.dewPointC)}; the wood is ${above}`],
    ...(dew.wetBulbC === null ? [] : [["wet bulb", degrees(dew.wetBulbC)]]),
    ["wood", `settles at ${formatNumber(moisture.moisturePercent, 2)} % moisture in this air`],
  ];
}

const aboveWords = (minutes: number | null): string =>
  minutes === null
    ? "above it for as long as the room stays closed"
    : minutes === 0
      ? "below it throughout"
      : `above it for ${formatNumber(minutes, 2)} min`;

const vapourWords = (v: Vapours): string[][] => [
  ...v.components.map((c) => {
    const above = aboveWords(c.minutesAboveLimit);
    const limit = `${formatNumber(c.limitPpm, 3)} ppm (${c.limitBody} ${c.limitYear})`;
    const flammable = `${percent(c.shareOfLowerFlammableLimit)} of what can catch fire`;
    return [
      c.component,
      `${formatNumber(c.peakPpm, 3)} ppm at the end; limit ${limit}, ${above}; ${flammable}`,
    ];
  }),
  [
    "fire",
    `${percent(4 * v.mixtureShareOfLowerFlammableLimit)} of a quarter of what can catch fire at the end, ${aboveWords(v.minutesAboveQuarterFlammable)}`,
  ],
  ["fresh air", `${formatNumber(v.ventilationM3PerH, 2)} m³/h would hold it at the limits`],
];

function vapours(typed: ShopOptions, temperatureC: unknown): Vapours | undefined {
  const amountMl = typed.millilitres("amount");
  if (amountMl === undefined) return undefined;
  const room = {
    volumeM3: needed(plainNumber(typed, "room", "40"), "room", "40"),
    ...given({ airChangesPerHour: plainNumber(typed, "changes", "0.5") }),
  };
  const minutes = needed(plainNumber(typed, "minutes", "60"), "minutes", "60");
  const input = { solvent: typed.liquid(), amountMl, minutes, room, temperatureC };
  return runCalculation<Vapours>("vapour", input, optionOf);
}

export const command = defineCommand({
  usage: "air --air 20C --humidity 50% [--wood 12C] [--amount 100ml --minutes 60 --room 40]",
  positionals: 0,
  options: {
    ...airOptions,
    wood: { type: "string", value: "12C", description: "temperature of the wood; as the air unless told" },
    amount: { type: "string", value: "100ml", description: "alcohol that goes into the room's air" },
    minutes: { type: "string", value: "60", description: "over how long it does" },
    room: { type: "string", value: "40", description: "the room, m³" },
    changes: {
      type: "string",
      value: "0.5",
      description: "how often an hour its air is replaced; 0 unless told",
    },
    alcohol: liquidOptions.alcohol,
    strength: liquidOptions.strength,
    gallon: liquidOptions.gallon,
  },
  run({ values }, effects) {
    const typed = new ShopOptions(values);
    const air = airFromOptions(typed);
    const dew = runCalculation<Dew>(
      "dew-point",
      { ...air, ...given({ surfaceC: celsiusOf(typed, "wood") }) },
      optionOf,
    );
    const moisture = runCalculation<Moisture>("wood-moisture", air, optionOf);
    const vapour = vapours(typed, air.temperatureC);
    if (values.json === true)
      return effects.stdout(`${JSON.stringify({ dew, moisture, vapour: vapour ?? null }, null, 2)}\n`);
    const rows = [...airWords(dew, moisture), ...(vapour === undefined ? [] : vapourWords(vapour))];
    const notes = [
      ...typed.notes,
      ...[dew, moisture, vapour].flatMap((found) => found?.flags.map((f) => f.message) ?? []),
      ...(vapour === undefined ? [] : [vapour.statement]),
    ];
    effects.stdout(`${tableText(rows)}${notes.length === 0 ? "" : `\n${notes.join("\n")}\n`}`);
  },
});
