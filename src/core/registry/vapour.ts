import { z } from "zod";
import { gasConstant } from "../evaporation/air-side.ts";
import { propertiesOf, type Volatile } from "../evaporation/volatiles.ts";
import { cautionsFor } from "../safety/cautions.ts";
import { type Hazards, hazardsOf, lowestLimit } from "../safety/hazards.ts";
import { type Room, type Source, shareInRoom, timeAbove } from "../safety/room-vapour.ts";
import type { Component } from "../solution/component.ts";
import type { Composition } from "../solution/composition.ts";
import { densityOfSolvent } from "../solution/density.ts";
import { cubicMetre } from "../units.ts";
import { airTemperatureC, kelvinOf } from "./air-input.ts";
import { amountMl } from "./amount.ts";
import { defineCalculation } from "./calculation.ts";
import { type Flag, flag, flagsAbout } from "./flag.ts";
import { solvent } from "./solvent.ts";
import { notAClearance, volatileFromInput } from "./volatile-input.ts";

const secondsPerHour = 3600;
const atmosphere = 101_325;
/** A quarter of the lower flammable limit: what the ventilation for fire keeps to. */
const partOfFlammable = 0.25;
const liquidTemperatures = { max: 40 };

const room = z.strictObject({
  volumeM3: z.number().min(1).max(100_000).describe("of the room, m³"),
  airChangesPerHour: z
    .number()
    .min(0)
    .max(100)
    .default(0)
    .describe("how often its air is replaced; a closed room 0"),
  mixingFactor: z
    .number()
    .min(1)
    .max(10)
    .default(5)
    .describe("how badly the fresh air mixes: 1 well, 10 badly"),
});

const component = z.object({
  component: z.string(),
  massG: z.number().describe("that evaporates, g"),
  peakPpm: z.number().describe("at the end of the work, parts per million of the air"),
  steadyPpm: z
    .number()
    .nullable()
    .describe("if the work went on; null in a closed room, where it has no end"),
  limitPpm: z.number().describe("the lowest of the published limits"),
  limitBody: z.string(),
  limitYear: z.number(),
  limitSeen: z.string().describe("whether the limit is from a document, or from memory"),
  shareOfLimit: z.number().describe("of the peak"),
  minutesAboveLimit: z
    .number()
    .nullable()
    .describe("work and after; null for as long as the room stays closed"),
  shareOfLowerFlammableLimit: z.number().describe("of the peak"),
  goesThroughSkin: z.boolean(),
});

interface Vapour {
  readonly component: Volatile;
  readonly hazards: Hazards;
  readonly massKg: number;
  readonly source: Source;
}

/** Every part that burns, as vapour; methanol first, since its limit is the first to matter. */
function vapoursOf(composition: Composition, kilograms: number, seconds: number, kelvin: number): Vapour[] {
  const molarVolume = (gasConstant * kelvin) / atmosphere;
  const found = (Object.entries(composition) as [Component, number][]).flatMap(([name, share]): Vapour[] => {
    const hazards = hazardsOf(name);
    if (hazards === undefined) return [];
    const massKg = share * kilograms;
    const volatile = name as Volatile; // a liquid of the hazards table has a name
    const rate = (massKg / propertiesOf(volatile).molarMass) * (molarVolume / seconds);
    return [{ component: volatile, hazards, massKg, source: { rate, duration: seconds } }];
  });
  const pressing = (v: Vapour): number =>
    v.component === "methanol" ? Number.POSITIVE_INFINITY : v.source.rate / lowestLimit(v.hazards).ppm;
  return found.sort((a, b) => pressing(b) - pressing(a));
}

const ppm = 1e6;
const sumOf = (vapours: readonly Vapour[], of: (v: Vapour) => number): number =>
  vapours.reduce((sum, v) => sum + of(v), 0);

const minutesOrNull = (time: number): number | null => (Number.isFinite(time) ? time / 60 : null);

function rowOf(v: Vapour, air: Room) {
  const limit = lowestLimit(v.hazards);
  const peak = shareInRoom(v.source, air, v.source.duration);
  return {
    component: v.component,
    massG: v.massKg * 1e3,
    peakPpm: peak * ppm,
    steadyPpm: air.freshAir === 0 ? null : (v.source.rate / air.freshAir) * ppm,
    limitPpm: limit.ppm,
    limitBody: limit.body,
    limitYear: limit.year,
    limitSeen: limit.seen,
    shareOfLimit: (peak * ppm) / limit.ppm,
    minutesAboveLimit: minutesOrNull(timeAbove(v.source, air, limit.ppm / ppm)),
    shareOfLowerFlammableLimit: peak / v.hazards.lowerFlammableLimit,
    goesThroughSkin: v.hazards.goesThroughSkin,
  };
}

function warnings(ofLimit: number, ofFlammable: number): Flag[] {
  const about = (code: string, message: string): Flag => ({ code, field: "components", message });
  return [
    ...(ofLimit > 1 ? [about("above-limit", "More than an exposure limit allows over a working day.")] : []),
    ...(ofFlammable > partOfFlammable
      ? [
          about(
            "near-flammable",
            "More than a quarter of what can catch fire; near the work it is more still.",
          ),
        ]
      : []),
  ];
}

const cautionsOf = (composition: Composition) =>
  cautionsFor(
    "coating indoors",
    (Object.entries(composition) as [Component, number][]).map(([name, massFraction]) => ({
      component: name,
      massFraction,
    })),
  ).map((caution) => ({
    code: caution.code,
    component: "component" in caution ? caution.component : null,
  }));

export const vapour = defineCalculation({
  name: "vapour",
  purpose:
    "What alcohol in a room's air comes to while one works, against published limits, and the air it asks for",
  input: z.strictObject({
    solvent,
    amountMl: amountMl.describe("of the solvent that evaporates, without the resin, mL"),
    minutes: z.number().min(1).max(1440).describe("over how long it evaporates"),
    room,
    temperatureC: airTemperatureC.max(liquidTemperatures.max).default(20),
  }),
  output: z.object({
    components: z.array(component).describe("methanol first, then by how soon each reaches its limit"),
    mixtureShareOfLimit: z.number().describe("the shares added: vapours of one kind add up"),
    mixtureShareOfLowerFlammableLimit: z.number(),
    mixtureMinutesAboveLimit: z
      .number()
      .nullable()
      .describe(
        "that the shares of the limits add to more than one; null for as long as the room stays closed",
      ),
    minutesAboveQuarterFlammable: z
      .number()
      .nullable()
      .describe("that they add to more than a quarter of what can catch fire; null as above"),
    ventilationM3PerH: z
      .number()
      .describe("fresh air that would hold all of them together at their limits, mixing factor included"),
    fireVentilationM3PerH: z
      .number()
      .describe("fresh air that would hold them at a quarter of what can catch fire"),
    cautions: z.array(z.object({ code: z.string(), component: z.string().nullable() })),
    statement: z.string(),
    flags: z.array(flag),
  }),
  run: (given) => {
    const composition = volatileFromInput(given.solvent);
    const kelvin = kelvinOf(given.temperatureC);
    const density = densityOfSolvent(composition, kelvin);
    const kilograms = (given.amountMl / 1e6) * density.value;
    const seconds = given.minutes * 60;
    const vapours = vapoursOf(composition, kilograms, seconds, kelvin);
    const { volumeM3, airChangesPerHour, mixingFactor } = given.room;
    const air: Room = {
      volume: cubicMetre(volumeM3),
      freshAir: (volumeM3 * airChangesPerHour) / secondsPerHour / mixingFactor,
    };
    const components = vapours.map((v) => rowOf(v, air));
    const ofLimit = components.reduce((sum, c) => sum + c.shareOfLimit, 0);
    const ofFlammable = components.reduce((sum, c) => sum + c.shareOfLowerFlammableLimit, 0);
    const perHour = (of: (v: Vapour) => number): number =>
      sumOf(vapours, (v) => v.source.rate / of(v)) * mixingFactor * secondsPerHour;
    // all of them are given off over the same time: their shares of a level add to one vapour's
    const minutesAbove = (of: (v: Vapour) => number, level: number): number | null =>
      minutesOrNull(
        timeAbove({ rate: sumOf(vapours, (v) => v.source.rate / of(v)), duration: seconds }, air, level),
      );
    return {
      components,
      mixtureShareOfLimit: ofLimit,
      mixtureShareOfLowerFlammableLimit: ofFlammable,
      mixtureMinutesAboveLimit: minutesAbove((v) => lowestLimit(v.hazards).ppm / ppm, 1),
      minutesAboveQuarterFlammable: minutesAbove((v) => v.hazards.lowerFlammableLimit, partOfFlammable),
      ventilationM3PerH: perHour((v) => lowestLimit(v.hazards).ppm / ppm),
      fireVentilationM3PerH: perHour((v) => partOfFlammable * v.hazards.lowerFlammableLimit),
      cautions: cautionsOf(composition),
      statement: notAClearance,
      flags: [...flagsAbout(density.flags, "solvent"), ...warnings(ofLimit, ofFlammable)],
    };
  },
  sources: [
    "Industrial ventilation manual: dilution, accumulation and mixtures, as printed in public equation lists",
    "Limits: OSHA 29 CFR 1910.1000 table Z-1 (1993), NIOSH Pocket Guide (2007); flammable limits: IEC 60079-20-1:2010, NFPA 497 (2008)",
  ],
  example: {
    input: {
      solvent: { alcohol: "ethanol" },
      amountMl: 100,
      minutes: 60,
      room: { volumeM3: 40, airChangesPerHour: 0.5, mixingFactor: 5 },
    },
    output: { components: [{ peakPpm: 980 }], ventilationM3PerH: 206 },
  },
});
