import { z } from "zod";
import { components } from "../solution/component.ts";
import { amountG, amountMl } from "./amount.ts";

export type { Component } from "../solution/component.ts";

const strength = {
  alcohol: z.enum(components).describe("the liquid; with no strength it is pure, else the rest is water"),
  massFraction: z.number().min(0).max(1).optional().describe("strength by mass"),
  volumeFraction: z.number().min(0).max(1).optional().describe("strength by volume, as a label has it"),
  atTemperatureC: z.number().optional().describe("what volumeFraction is stated at; 20 when left out"),
  usProof: z.number().min(0).max(200).optional().describe("strength as twice the volume percent at 60 °F"),
};

/** An alcohol with its water; no strength means pure. */
export const liquid = z.strictObject(strength);
export type LiquidInput = z.output<typeof liquid>;

/** A liquid as bought, or several by share of mass or of volume. */
export const solvent = z.union([
  liquid,
  z.strictObject({
    parts: z
      .array(
        z.strictObject({
          ...strength,
          massShare: z.number().min(0).max(1).optional().describe("part of the whole; they sum to 1"),
          volumeShare: z.number().min(0).max(1).optional().describe("part of the whole; they sum to 1"),
        }),
      )
      .min(1),
  }),
]);
export type SolventInput = z.output<typeof solvent>;

/** Several liquids by amount. */
export const amounts = z
  .array(
    z.strictObject({
      ...strength,
      massG: amountG.optional(),
      volumeMl: amountMl.optional(),
    }),
  )
  .min(1);

/** Standard uncertainties of what was measured with; zero or absent is taken as exact. */
export const instruments = z.strictObject({
  scaleG: z.number().min(0).max(1000).optional().describe("standard uncertainty of a weighing"),
  jugMl: z.number().min(0).max(1000).optional().describe("standard uncertainty of a measured volume"),
  temperatureC: z
    .number()
    .min(0)
    .max(20)
    .optional()
    .describe("standard uncertainty of the liquid's temperature"),
  strengthVolumeFraction: z
    .number()
    .min(0)
    .max(1)
    .optional()
    .describe("standard uncertainty of the strength"),
  moistureMassFraction: z
    .number()
    .min(0)
    .max(1)
    .optional()
    .describe("standard uncertainty of the resin's moisture"),
  partialDensityKgM3: z
    .number()
    .min(0)
    .max(500)
    .optional()
    .describe("standard uncertainty of the dissolved resin's density"),
});
export type InstrumentsInput = z.output<typeof instruments>;

export const resins = z
  .array(
    z.strictObject({
      massShare: z.number().min(0).max(1).default(1).describe("of the resins as weighed; they sum to 1"),
      moistureMassFraction: z.number().min(0).max(1).default(0).describe("water in the flakes as weighed"),
      waxMassFraction: z
        .number()
        .min(0)
        .max(1)
        .default(0)
        .describe("wax, which counts as resin until it is filtered out"),
      insolubleMassFraction: z
        .number()
        .min(0)
        .max(1)
        .default(0)
        .describe("what does not dissolve, which counts as resin until it is filtered out"),
      partialDensityKgM3: z.number().positive().default(1205).describe("of the resin once dissolved"),
    }),
  )
  .min(1);
export type ResinsInput = z.output<typeof resins>;
