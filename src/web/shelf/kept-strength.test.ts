import { expect, test } from "vitest";
import { compositionOf } from "../../core/jar/makeup.ts";
import { readStrength } from "./draft.ts";
import { strengthDraftOf, toldStrength } from "./kept-strength.ts";

const comesBack = (kept: unknown) => {
  const read = readStrength(strengthDraftOf(kept));
  return read.ok ? read.solvent : read.fault;
};

test.each([
  { alcohol: "ethanol", volumeFraction: 0.96 },
  { alcohol: "isopropanol", massFraction: 0.995 },
  { alcohol: "ethanol", usProof: 190 },
  {
    parts: [
      { alcohol: "ethanol", massShare: 0.85 },
      { alcohol: "mek", massShare: 0.03 },
      { alcohol: "unknown", massShare: 0.12 },
    ],
  },
  {
    parts: [
      { alcohol: "ethanol", volumeShare: 0.9 },
      { alcohol: "n-heptane", volumeShare: 0.1 },
    ],
  },
])("%j is typed as it was told", (kept) => {
  expect(comesBack(kept)).toEqual(kept);
});

test.each([
  { alcohol: "ethanol", volumeFraction: 0.95, atTemperatureC: 15 },
  {
    parts: [
      { alcohol: "ethanol", volumeFraction: 0.96, massShare: 0.9 },
      { alcohol: "isopropanol", massFraction: 0.99, massShare: 0.1 },
    ],
  },
])("%j is typed by weight, and comes to the same", (kept) => {
  const was = compositionOf(kept);
  const read = readStrength(strengthDraftOf(kept));
  if (!read.ok || !("composition" in was)) throw new Error("It could not be read.");
  expect(read.composition.unknown).toBeUndefined();
  for (const [component, share] of Object.entries(was.composition))
    expect(read.composition[component as "ethanol"]).toBeCloseTo(share, 5);
});

test("an alcohol with no strength told is pure, and stays so", () => {
  expect(toldStrength({ alcohol: "n-propanol" })).toEqual({ how: "pure" });
  const read = readStrength(strengthDraftOf({ alcohol: "n-propanol" }));
  expect(read.ok && read.composition).toEqual({ "n-propanol": 1 });
});

test("a strength that cannot be read is typed anew", () => {
  expect(toldStrength({ alcohol: "moonshine" })).toBeUndefined();
  expect(readStrength(strengthDraftOf({ alcohol: "moonshine" }))).toMatchObject({ fault: "empty" });
});
