import { z } from "zod";
import { DomainError } from "../domain-error.ts";
import { aqueousDensity, isTabulated, tabulatedAlcohols } from "../solution/aqueous-density.ts";
import type { Component } from "../solution/component.ts";
import { aqueous, type Composition, type Liquid, pouredTogether, shareOf } from "../solution/composition.ts";
import { densityOfSolvent } from "../solution/density.ts";
import { amountForStrength } from "../solution/dilute.ts";
import { volumeOfLiquid } from "../solution/solution.ts";
import {
  massFractionFromDensity,
  strengthAt20C,
  strengthAt60F,
  usProofFromMassFraction,
  volumeFractionFromMassFraction,
} from "../solution/strength.ts";
import {
  cubicMetreFromMillilitres,
  gramsFromKilogram,
  type Kelvin,
  type Kilogram,
  kilogram,
  kilogramFromGrams,
  kilogramPerCubicMetre,
  massFraction,
  millilitresFromCubicMetre,
} from "../units.ts";
import { defineCalculation } from "./calculation.ts";
import { flag, flagsAbout } from "./flag.ts";
import { liquidFromInput, temperatureFromInput } from "./solution-input.ts";
import { amounts, type LiquidInput, liquid } from "./solvent.ts";

const sources = [
  "OIML R 22 (1975), general formula (ethanol with water, −20–40 °C)",
  "CRC Handbook of Chemistry and Physics, 102nd ed., concentrative properties (methanol, 1-propanol, 2-propanol with water, 20 °C)",
  "J. Am. Chem. Soc. 43 (1921) 1005 (2-propanol with water, 20 °C)",
];

const atTemperature = liquid.extend({ temperatureC: z.number().optional() });

export const alcoholDensity = defineCalculation({
  name: "alcohol-density",
  purpose: "Density of an alcohol with water at a temperature",
  input: atTemperature,
  output: z.object({
    densityKgM3: z.number(),
    standardUncertaintyKgM3: z.number(),
    flags: z.array(flag),
  }),
  run: ({ temperatureC, ...input }) => {
    const density = densityOfSolvent(liquidFromInput(input), temperatureFromInput(temperatureC));
    return {
      densityKgM3: density.value,
      standardUncertaintyKgM3: density.standardUncertainty,
      flags: flagsAbout(density.flags, "alcohol"),
    };
  },
  sources,
  example: {
    input: { alcohol: "ethanol", massFraction: 0.5, temperatureC: 20 },
    output: { densityKgM3: 913.77 },
  },
});

/** Strength in every form that a label carries. Water has none. */
function strengths(alcohol: Component, composition: Composition) {
  const share = shareOf(composition, alcohol);
  return {
    volumeFraction20C: volumeFractionFromMassFraction(alcohol, share, strengthAt20C),
    volumeFraction60F: volumeFractionFromMassFraction(alcohol, share, strengthAt60F),
    usProof: alcohol === "ethanol" ? usProofFromMassFraction(share) : null,
  };
}

/** By a hydrometer: the only strength given, of a liquid that was measured with water. */
function fromDensity(input: LiquidInput, densityKgM3: number, temperatureC: number | undefined): Composition {
  const told = (["massFraction", "volumeFraction", "usProof"] as const).find((k) => input[k] !== undefined);
  if (told !== undefined)
    throw new DomainError({
      code: "contradiction",
      field: "densityKgM3",
      value: densityKgM3,
      because: `${told} says the strength already; give one of them.`,
    });
  if (!isTabulated(input.alcohol))
    throw new DomainError({
      code: "unknown-name",
      field: "alcohol",
      value: input.alcohol,
      limits: { allowed: tabulatedAlcohols },
      because: "Of others with water no densities were measured.",
    });
  const density = kilogramPerCubicMetre(densityKgM3, "densityKgM3");
  return aqueous(
    input.alcohol,
    massFractionFromDensity(input.alcohol, density, temperatureFromInput(temperatureC)),
  );
}

export const alcoholStrength = defineCalculation({
  name: "alcohol-strength",
  purpose: "Strength of an alcohol in every form that a label carries, with its water and density",
  input: atTemperature.extend({
    densityKgM3: z
      .number()
      .optional()
      .describe("as a hydrometer reads it at temperatureC, in place of a strength"),
  }),
  output: z.object({
    massFraction: z.number(),
    waterMassFraction: z.number(),
    volumeFraction20C: z.number(),
    volumeFraction60F: z.number(),
    usProof: z.number().nullable(),
    densityKgM3: z.number(),
    standardUncertaintyKgM3: z.number(),
    flags: z.array(flag),
  }),
  run: ({ temperatureC, densityKgM3, ...input }) => {
    const composition =
      densityKgM3 === undefined ? liquidFromInput(input) : fromDensity(input, densityKgM3, temperatureC);
    const density = densityOfSolvent(composition, temperatureFromInput(temperatureC));
    const share = shareOf(composition, input.alcohol);
    const stated =
      input.volumeFraction === undefined
        ? []
        : aqueousDensity(input.alcohol, share, temperatureFromInput(input.atTemperatureC)).flags;
    return {
      massFraction: share,
      waterMassFraction: shareOf(composition, "water"),
      ...strengths(input.alcohol, composition),
      densityKgM3: density.value,
      standardUncertaintyKgM3: density.standardUncertainty,
      flags: [
        ...flagsAbout(density.flags, "alcohol"),
        ...flagsAbout(
          stated.filter((code) => code === "estimated-temperature"),
          "alcohol",
          "atTemperatureC",
        ),
      ],
    };
  },
  sources: [...sources, "27 CFR 30.11 (US proof, 60 °F)"],
  example: {
    input: { alcohol: "ethanol", volumeFraction: 0.95, atTemperatureC: 20 },
    output: { massFraction: 0.92408, waterMassFraction: 0.07592, densityKgM3: 811.38 },
  },
});

type Part = z.output<typeof amounts>[number];

/** The mass of a part; undefined for the part whose amount is asked for. */
function massOfPart(
  part: Part,
  composition: Composition,
  i: number,
  temperature: Kelvin,
): Kilogram | undefined {
  const { massG, volumeMl } = part;
  if (massG !== undefined && volumeMl !== undefined)
    throw new DomainError({
      code: "contradiction",
      field: `parts[${i}].volumeMl`,
      value: volumeMl,
      because: "massG says the amount already; give one of them.",
    });
  if (massG !== undefined) return kilogramFromGrams(massG);
  if (volumeMl === undefined) return undefined;
  return kilogram(cubicMetreFromMillilitres(volumeMl) * densityOfSolvent(composition, temperature).value);
}

const inWater = (composition: Composition): Component | undefined => {
  const others = (Object.keys(composition) as Component[]).filter((c) => c !== "water");
  return others.length === 1 ? others[0] : undefined;
};

/** The one part without an amount, as much of it as brings the others to the strength that is wanted. */
function withAsked(
  parts: readonly { readonly composition: Composition; readonly mass: Kilogram | undefined }[],
  to: z.output<typeof wanted> | undefined,
): readonly Liquid[] {
  const asked = parts.findIndex((part) => part.mass === undefined);
  const known = parts.flatMap(({ composition, mass }) => (mass === undefined ? [] : [{ composition, mass }]));
  if (to === undefined) {
    if (asked >= 0)
      throw new DomainError({ code: "missing", field: `parts[${asked}].volumeMl`, value: undefined });
    return known;
  }
  const adding = parts[asked];
  if (adding === undefined || known.length !== parts.length - 1)
    throw new DomainError({
      code: "contradiction",
      field: "to",
      value: to,
      because: "With it, one part and only one is without an amount: the one that is asked for.",
    });
  const there = pouredTogether(known);
  const alcohol = inWater({ ...there.composition, ...adding.composition });
  if (alcohol === undefined)
    throw new DomainError({
      code: "contradiction",
      field: "to",
      value: to,
      because: "The strength of a blend is that of one alcohol in water.",
    });
  const target = shareOf(liquidFromInput({ ...to, alcohol }, "to"), alcohol);
  const mass = amountForStrength(there, adding.composition, alcohol, target);
  return parts.map((part) => ({ composition: part.composition, mass: part.mass ?? mass }));
}

const wanted = z.strictObject({
  massFraction: z.number().min(0).max(1).optional(),
  volumeFraction: z.number().min(0).max(1).optional(),
  atTemperatureC: z.number().optional(),
  usProof: z.number().min(0).max(200).optional(),
});

export const alcoholBlend = defineCalculation({
  name: "alcohol-blend",
  purpose: "Alcohols and water poured together: what it comes to, how it shrinks, how much for a strength",
  input: z.strictObject({
    parts: amounts,
    temperatureC: z.number().optional(),
    /** A strength that is wanted: then one part has no amount, and gets it. */
    to: wanted.optional(),
  }),
  output: z.object({
    massG: z.number(),
    volumeMl: z.number(),
    parts: z.array(z.object({ massG: z.number(), volumeMl: z.number() })),
    contractionMl: z.number(),
    densityKgM3: z.number(),
    massFractions: z.record(z.string(), z.number()),
    waterMassFraction: z.number(),
    volumeFraction20C: z.number().nullable(),
    volumeFraction60F: z.number().nullable(),
    flags: z.array(flag),
  }),
  run: (input) => {
    const temperature = temperatureFromInput(input.temperatureC);
    const parts = input.parts.map((part, i) => {
      const { massG: _, volumeMl: __, ...label } = part;
      const composition = liquidFromInput(label, `parts[${i}]`);
      return { composition, mass: massOfPart(part, composition, i, temperature) };
    });
    const liquids = withAsked(parts, input.to);
    const blend = pouredTogether(liquids);
    const density = densityOfSolvent(blend.composition, temperature);
    const volume = volumeOfLiquid(blend, temperature);
    const before = liquids.reduce((sum, l) => sum + volumeOfLiquid(l, temperature), 0);
    const alcohol = inWater(blend.composition);
    const strength = alcohol === undefined ? undefined : strengths(alcohol, blend.composition);
    return {
      massG: gramsFromKilogram(blend.mass),
      volumeMl: millilitresFromCubicMetre(volume),
      parts: liquids.map((l) => ({
        massG: gramsFromKilogram(l.mass),
        volumeMl: millilitresFromCubicMetre(volumeOfLiquid(l, temperature)),
      })),
      contractionMl: (before - volume) * 1e6,
      densityKgM3: density.value,
      massFractions: blend.composition as Record<string, number>,
      waterMassFraction: blend.composition.water ?? massFraction(0),
      volumeFraction20C: strength?.volumeFraction20C ?? null,
      volumeFraction60F: strength?.volumeFraction60F ?? null,
      flags: flagsAbout(density.flags, "parts"),
    };
  },
  sources,
  example: {
    input: {
      parts: [
        { alcohol: "ethanol", volumeFraction: 0.95, volumeMl: 500 },
        { alcohol: "water", volumeMl: 500 },
      ],
      temperatureC: 20,
    },
    output: { volumeMl: 970.6, contractionMl: 29.4 },
  },
});
