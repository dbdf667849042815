import { type PiecePlanOutput, scheduleFromPlan } from "../core/registry/piece-schedule.ts";
import { piecePlan } from "../core/registry/pieces.ts";
import { shopClock } from "../core/schedule/shop-clock.ts";
import { needed } from "./air-options.ts";
import { calendarOptions, idOfName, writeCalendar } from "./calendar-option.ts";
import { refused } from "./cli-error.ts";
import { defineCommand } from "./command.ts";
import { eveningOptions, windowsTyped } from "./evening-options.ts";
import { pieceEventsInWords, pieceInWords } from "./piece-words.ts";
import { recipeOptions, recipeTyped } from "./recipe-options.ts";
import { given, liquidOptions, runCalculation, ShopOptions } from "./shop-options.ts";
import { surfaceOptions, surfacesFrom } from "./surface-options.ts";
import { nowOf, zoneOf } from "./when-options.ts";

const optionOf: Readonly<Record<string, string>> = {
  areaM2: "--area",
  method: "--method",
  coats: "--coats",
  cutLbPerGal: "--cut",
  millilitresPerM2PerCoat: "--use",
  surfaces: "--surfaces",
  turnMinutes: "--turn",
  hands: "--hands",
  dryingPlaces: "--places",
  spareShare: "--spare",
  temperatureC: "--temperature",
  "evenings[0]": "--evenings",
  "windows[0][0]": "--evenings",
  "windows[0][1]": "--evenings",
  "solvent.alcohol": "--alcohol",
  "solvent.massFraction": "--strength",
  "solvent.volumeFraction": "--strength",
  "solvent.usProof": "--strength",
};

/** How long to look for a better plan. */
const limitMs = 2000;

export const command = defineCommand({
  usage: "piece --area 1.5m2 --method brush --coats 4 --cut 2lb --strength 95%",
  positionals: 0,
  options: {
    area: { type: "string", value: "1.5m2", description: "surface to be finished" },
    ...recipeOptions,
    ...surfaceOptions,
    ...eveningOptions,
    spare: { type: "string", value: "20%", description: "mixed on top of what goes on; a fifth unless told" },
    alcohol: liquidOptions.alcohol,
    strength: liquidOptions.strength,
    temperature: liquidOptions.temperature,
    gallon: liquidOptions.gallon,
    name: { type: "string", value: "TEXT", description: "what the calendar calls it" },
    ...calendarOptions,
  },
  run({ values }, effects) {
    const typed = new ShopOptions(values);
    const zone = zoneOf(values.zone);
    const stamp = nowOf(values.now);
    if (values.calendar !== undefined && values.name === undefined) throw nameless();
    const input = {
      areaM2: needed(typed.number("area", { dimensions: ["area"], bareUnit: "m2" }), "area", "1.5m2"),
      ...recipeTyped(typed),
      ...surfacesFrom(typed),
      ...given({ spareShare: typed.fraction("spare") }),
      solvent: typed.liquid(),
      ...typed.temperatureC(),
      windows: windowsTyped(
        typed,
        shopClock(zone)
          .clock(Date.parse(stamp) / 60_000)
          .slice(0, 10),
      ),
    };
    const found = runCalculation<PiecePlanOutput>("piece-plan", { ...input, limitMs }, optionOf);
    const { steps } = scheduleFromPlan(piecePlan.input.parse(input), found, {});
    if (values.json === true) effects.stdout(`${JSON.stringify(found, null, 2)}\n`);
    else effects.stdout(pieceInWords(found, steps, shopClock(zone), typed.notes));
    if (values.calendar === undefined) return;
    const name = values.name ?? "";
    const events = pieceEventsInWords(idOfName("piece", name), name, steps, shopClock(zone));
    writeCalendar({ path: values.calendar, zone, stamp, events }, effects);
  },
});

/** The ids of the evenings come from the name: without one, two pieces would be one. */
const nameless = () =>
  refused({
    code: "missing",
    field: "--name",
    message:
      '--name is missing: the calendar must know the piece again. For instance --name "Table top" would do.',
    value: null,
    limits: null,
  });
