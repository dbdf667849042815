import { z } from "zod";
import { colourDifferenceCie76, colourDifferenceCie2000 } from "../colour/colour-difference.ts";
import { defineCalculation } from "./calculation.ts";

const lab = z
  .strictObject({
    L: z
      .number()
      .min(0)
      .max(110)
      .describe("lightness, 0 black to 100 white; a little over where the surface glows"),
    a: z.number().min(-200).max(200).describe("green (negative) to red"),
    b: z.number().min(-200).max(200).describe("blue (negative) to yellow"),
  })
  .describe("CIELAB under D65");

export const colourDifference = defineCalculation({
  name: "colour-difference",
  purpose: "How far apart two colours look, from their CIELAB values under the same light.",
  input: z.strictObject({ a: lab, b: lab }),
  output: z.object({
    cie2000: z.number().describe("CIEDE2000; about 1 is just seen side by side"),
    cie76: z.number().describe("the plain distance in CIELAB"),
  }),
  run: ({ a, b }) => ({ cie2000: colourDifferenceCie2000(a, b), cie76: colourDifferenceCie76(a, b) }),
  sources: [
    "Sharma, Wu, Dalal, Color Res. Appl. 30 (2005) 21, eq. 2–22 (ISO/CIE 11664-6)",
    "CIE 15:2004, clause 8.2.1.3",
  ],
  example: {
    input: { a: { L: 50, a: 2.6772, b: -79.7751 }, b: { L: 50, a: 0, b: -82.7485 } },
    output: { cie2000: 2.0425, cie76: 4.0011 },
  },
});
