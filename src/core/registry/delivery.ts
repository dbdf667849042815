import { z } from "zod";
import { dayOfShare, deliveryChance, usualSpread } from "../pieces/delivery.ts";
import { randomFromSeed } from "../random.ts";
import { defineCalculation } from "./calculation.ts";
import { examplePiece, pieceInput, pieceOf } from "./piece-input.ts";
import { recipeOf } from "./piece-mixes.ts";

const input = pieceInput.extend({
  /** Two waits of three lie between the figure divided by this and times it. */
  spreadTimes: z.number().default(usualSpread),
  runs: z.int().default(2000),
  seed: z.string().min(1),
  /** Of the runs, for the day to be said: nine in ten. */
  share: z.number().min(0.01).max(0.999).default(0.9),
});

const output = z.object({
  runs: z.number(),
  doneBy: z.array(z.object({ day: z.string(), share: z.number() })),
  /** Of the runs, those that the evenings given were too few for. */
  neverShare: z.number(),
  /** Null where so many of the runs were never done. */
  dayOfShare: z.string().nullable(),
});

export type DeliveryInput = z.input<typeof input>;
export type DeliveryOutput = z.output<typeof output>;

export const delivery = defineCalculation({
  name: "delivery-chance",
  purpose: "How likely a piece is done by each day, when every wait may turn out longer or shorter",
  input,
  output,
  run: ({ spreadTimes, runs, seed, share, ...given }) => {
    const piece = pieceOf(given, recipeOf(given));
    const chance = deliveryChance({ ...piece, spreadTimes, runs, random: randomFromSeed(seed) });
    return { ...chance, doneBy: [...chance.doneBy], dayOfShare: dayOfShare(chance, share) };
  },
  sources: [
    "Every wait lognormal about its figure, 2000 seeded runs laid onto the evenings as a plan is",
    "The spread of a wait, times 1.4: from memory, editable",
  ],
  example: {
    input: {
      ...examplePiece,
      spreadTimes: 1,
      seed: "example",
    },
    output: { neverShare: 0, dayOfShare: "2026-10-19" },
  },
});
