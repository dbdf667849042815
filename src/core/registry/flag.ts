import { z } from "zod";
import type { FlagCode } from "../solution/flag.ts";

/** What to know about a result that lies outside what its source covers directly. */
export const flag = z.object({ code: z.string(), field: z.string(), message: z.string() });
export type Flag = z.output<typeof flag>;

const sentences: Record<FlagCode, string> = {
  "estimated-temperature":
    "Measured at 20 °C; carried to this temperature by the expansion of the pure liquids, which is an estimate.",
  "ideal-volumes":
    "No density of this mixture was measured: each alcohol is taken with its water as measured, and the volumes are taken to add.",
  "unknown-component":
    "A part of this liquid is not named; its density is assumed, and may be off by 50 kg/m³.",
  "below-freezing":
    "Ice would form at this temperature; the density is that of a liquid that would not be one.",
};

/** A temperature flag is about the temperature, the others about the liquid. */
export const flagsAbout = (
  codes: readonly FlagCode[],
  liquid: string,
  temperature = "temperatureC",
): Flag[] =>
  codes.map((code) => ({
    code,
    field: code === "estimated-temperature" || code === "below-freezing" ? temperature : liquid,
    message: sentences[code],
  }));
