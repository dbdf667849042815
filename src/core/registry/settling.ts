import { z } from "zod";
import { DomainError } from "../domain-error.ts";
import type { Estimated } from "../statistics/curves/estimated.ts";
import { type Settling, settling } from "../statistics/curves/settling.ts";
import { settlingShapes } from "../statistics/curves/settling-course.ts";
import { defineCalculation } from "./calculation.ts";
import { type Flag, flag } from "./flag.ts";

/** Settled when no more than a twentieth of the way is left: a convention of Lacbench's own. */
const usualLeftShare = 0.05;
const hours = z.number().min(0).max(1_000_000);
const reading = z.number().min(-1e6).max(1e6);

const estimated = z
  .object({ value: z.number(), standardError: z.number(), interval: z.tuple([z.number(), z.number()]) })
  .describe("with its 95 % interval; one that was told has none to speak of");

const told = ({ value, standardError, interval: [low, high] }: Estimated): z.input<typeof estimated> => ({
  value,
  standardError,
  interval: [low, high],
});

const nothing = {
  startsAt: null,
  endsAt: null,
  timeConstantH: null,
  exponent: null,
  settledH: null,
  residualDeviation: null,
  degreesOfFreedom: null,
};

const notFixed: Flag = {
  code: "not-fixed",
  field: "readings",
  message:
    "These readings do not say where it settles: the bend is not in sight yet, or they scatter too much. Read on.",
};

const beyond = (last: number): Flag => ({
  code: "beyond-readings",
  field: "settledH",
  message: `It settles after the last reading, at ${last} hours: so only if it goes on along this curve.`,
});

function outputOf(found: Settling, leftShare: number, last: number) {
  const settled = found.timeUntilLeft(leftShare);
  return {
    startsAt: told(found.start),
    endsAt: told(found.end),
    timeConstantH: told(found.timeConstant),
    exponent: told(found.shape),
    settledH: told(settled),
    residualDeviation: found.fit.residualDeviation,
    degreesOfFreedom: found.fit.degreesOfFreedom,
    flags: settled.value > last ? [beyond(last)] : [],
  };
}

export const settlingCalculation = defineCalculation({
  name: "settling",
  purpose:
    "Where readings over hours or days settle, and when: sheen, hardness, what is left of flakes in a jar",
  input: z.strictObject({
    readings: z
      .array(z.strictObject({ atH: hours, value: reading }))
      .min(2)
      .max(10_000),
    shape: z
      .enum(settlingShapes)
      .default("first-order")
      .describe("weibull: slow at first, or with a long tail"),
    startsAt: reading.optional().describe("what it is at hour 0, where that is known"),
    endsAt: reading
      .optional()
      .describe("what it comes to, where that is known: 0 for flakes that all dissolve"),
    leftShare: z
      .number()
      .min(0.001)
      .max(0.5)
      .default(usualLeftShare)
      .describe("settled when no more of the way is left: a convention of Lacbench's own"),
  }),
  output: z.object({
    startsAt: estimated.nullable(),
    endsAt: estimated.nullable(),
    timeConstantH: estimated
      .nullable()
      .describe("1/e of the way is left after it; null where the readings do not fix it"),
    exponent: estimated.nullable(),
    settledH: estimated.nullable(),
    residualDeviation: z
      .number()
      .nullable()
      .describe("how far a reading lies off the curve, in its own unit"),
    degreesOfFreedom: z.number().nullable(),
    flags: z.array(flag),
  }),
  run: ({ readings, shape, startsAt, endsAt, leftShare }) => {
    const timed = readings.map(({ atH, value }) => ({ time: atH, value }));
    try {
      const found = settling(timed, shape, { start: startsAt, end: endsAt });
      return outputOf(found, leftShare, Math.max(...timed.map(({ time }) => time)));
    } catch (error) {
      if (error instanceof DomainError && error.detail.code === "no-convergence")
        return { ...nothing, flags: [notFixed] };
      throw error;
    }
  },
  sources: [
    "D. M. Bates and D. G. Watts, Nonlinear Regression Analysis and Its Applications (1988), 2.2 and A4.1",
    "NIST Statistical Reference Datasets, nonlinear regression: the fit is held to their certified values",
  ],
  example: {
    input: {
      readings: [
        { atH: 1, value: 8.3 },
        { atH: 2, value: 10.3 },
        { atH: 3, value: 19 },
        { atH: 4, value: 16 },
        { atH: 5, value: 15.6 },
        { atH: 7, value: 19.8 },
      ],
      startsAt: 0,
    },
    output: { endsAt: { value: 19.143 }, timeConstantH: { value: 1.8829 }, residualDeviation: 2.549 },
  },
});
