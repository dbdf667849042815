import { describe, expect, test } from "vitest";
import { expectNear } from "../../../../test/near.ts";
import { patchMeans, type Reading } from "./readings.ts";

const reading = (patch: string, judge: string | undefined, value: number): Reading => ({
  patch,
  judge,
  value,
  jar: undefined,
  plank: undefined,
  board: undefined,
  factors: {},
});

describe("several readings of a patch", () => {
  test("with every judge on every patch the mean is the plain one", () => {
    const { patches, wobble } = patchMeans([
      reading("1", "ann", 10),
      reading("1", "ann", 12),
      reading("1", "bo", 17),
      reading("2", "ann", 20),
      reading("2", "bo", 26),
    ]);
    expect(patches.map((p) => p.value)).toEqual([14, 23]);
    // One pair read twice: 10 and 12, whose standard deviation is √2.
    expectNear(wobble.sameJudge ?? Number.NaN, Math.SQRT2, { relative: 1e-12 });
    expect(wobble.judges).toBe(2);
  });

  test("a judge who reads two higher moves no patch that she alone looked at", () => {
    const { patches, wobble } = patchMeans([
      reading("1", "ann", 10),
      reading("1", "bo", 12),
      reading("2", "ann", 20),
      reading("2", "bo", 22),
      reading("3", "bo", 32),
    ]);
    expectNear((patches[2]?.value ?? 0) - (patches[1]?.value ?? 0), 10, { absolute: 1e-12 });
    expectNear(wobble.betweenJudges ?? Number.NaN, 0, { absolute: 1e-12 });
  });

  test("nobody read anything twice: no wobble is made up", () => {
    const { wobble } = patchMeans([reading("1", undefined, 1), reading("2", undefined, 3)]);
    expect(wobble).toEqual({ judges: 1, readingsPerPatch: 1, sameJudge: null, betweenJudges: null });
  });
});
