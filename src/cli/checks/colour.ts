import { colourDifferenceCie76, colourDifferenceCie2000 } from "../../core/colour/colour-difference.ts";
import { gardnerNumber } from "../../core/colour/gardner.ts";
import { labFromXyz } from "../../core/colour/lab.ts";
import { linearFromSrgb, srgb } from "../../core/colour/srgb.ts";
import { xyzFromLinear } from "../../core/colour/xyz.ts";
import { numberIn, perRow } from "./table.ts";
import type { Row, Topic } from "./topic.ts";

const labIn = (row: Row, which: 1 | 2) => ({
  L: numberIn(row, `L${which}`),
  a: numberIn(row, `a${which}`),
  b: numberIn(row, `b${which}`),
});

export const topic: Topic = {
  tables: {
    "ciede2000-sharma.csv": perRow({
      inputs: ["L1", "a1", "b1", "L2", "a2", "b2"],
      expected: { dE00: ["abs", 1e-4], dE00_12digits: ["abs", 1e-8], dE76: ["abs", 1e-8] },
      others: ["pair"],
      compute(row) {
        const [one, other] = [labIn(row, 1), labIn(row, 2)];
        const dE00 = colourDifferenceCie2000(one, other);
        return { dE00, dE00_12digits: dE00, dE76: colourDifferenceCie76(one, other) };
      },
    }),
    "srgb-lab.csv": perRow({
      inputs: ["R", "G", "B"],
      expected: {
        X: ["abs", 1e-3],
        Y: ["abs", 1e-3],
        Z: ["abs", 1e-3],
        L: ["abs", 0.01],
        a: ["abs", 0.01],
        b: ["abs", 0.01],
      },
      compute(row) {
        const channel = (column: string) => numberIn(row, column) / 255;
        const xyz = xyzFromLinear(linearFromSrgb(srgb(channel("R"), channel("G"), channel("B"))));
        return { ...xyz, ...labFromXyz(xyz) };
      },
    }),
    "gardner-interpolation.csv": perRow({
      inputs: ["x", "y"],
      expected: { gardner: ["abs", 1e-3], distance_xy: ["abs", 1e-6] },
      compute(row) {
        const { gardner, distance } = gardnerNumber({ x: numberIn(row, "x"), y: numberIn(row, "y") });
        return { gardner, distance_xy: distance };
      },
    }),
  },
  notCompared: ["gardner-d1544.csv"],
};
