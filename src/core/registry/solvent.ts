import { z } from "zod";
import { components } from "../solution/component.ts";

export type { Component } from "../solution/component.ts";

const strength = {
  alcohol: z.enum(components),
  massFraction: z.number().min(0).max(1).optional(),
  volumeFraction: z.number().min(0).max(1).optional(),
  /** The temperature that `volumeFraction` is stated at: 20 unless told. */
  atTemperatureC: z.number().optional(),
  usProof: z.number().min(0).max(200).optional(),
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
          massShare: z.number().min(0).max(1).optional(),
          volumeShare: z.number().min(0).max(1).optional(),
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
      massG: z.number().positive().optional(),
      volumeMl: z.number().positive().optional(),
    }),
  )
  .min(1);
export type AmountsInput = z.output<typeof amounts>;

/** Standard uncertainties of what was measured with; zero or absent is taken as exact. */
export const instruments = z.strictObject({
  scaleG: z.number().min(0).optional(),
  jugMl: z.number().min(0).optional(),
  temperatureC: z.number().min(0).optional(),
  strengthVolumeFraction: z.number().min(0).max(1).optional(),
  moistureMassFraction: z.number().min(0).max(1).optional(),
  partialDensityKgM3: z.number().min(0).optional(),
});
export type InstrumentsInput = z.output<typeof instruments>;

export const resins = z
  .array(
    z.strictObject({
      massShare: z.number().min(0).max(1).default(1),
      moistureMassFraction: z.number().min(0).max(1).default(0),
      waxMassFraction: z.number().min(0).max(1).default(0),
      insolubleMassFraction: z.number().min(0).max(1).default(0),
      partialDensityKgM3: z.number().positive().default(1205),
    }),
  )
  .min(1);
export type ResinsInput = z.output<typeof resins>;
