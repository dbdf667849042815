import { expect, test } from "vitest";
import { draftOfResin, emptyResin, readResin } from "./resin-draft.ts";

test.each([
  { grade: "lemon", waxMassFraction: 0.005 },
  { grade: "seedlac", waxMassFraction: 0.05, moistureMassFraction: 0.02, insolubleMassFraction: 0.02 },
  { grade: "dewaxed lemon", waxMassFraction: 0.045, moistureMassFraction: 0.015 },
  { grade: "the dark one" },
])("%j is typed as it was kept, and what is not asked stays", (kept) => {
  expect(readResin(draftOfResin(kept), kept)).toEqual(kept);
});

test.each([
  ["no grade", {}],
  ["a grade in no words", { grade: "other" as const, gradeWords: " " }],
  ["wax as told, not told", { grade: "lemon" as const, wax: "told" as const }],
  ["wax of more than all", { grade: "lemon" as const, wax: "told" as const, waxShare: "120 %" }],
  ["moisture in words", { grade: "lemon" as const, moisture: "damp" }],
])("%s is not kept", (_, change) => {
  expect(readResin({ ...emptyResin, ...change })).toBeUndefined();
});

test("four and a half per cent as told is a mass fraction of 0.045", () => {
  expect(readResin({ ...emptyResin, grade: "button", wax: "told", waxShare: "4.5" })).toEqual({
    grade: "button",
    waxMassFraction: 0.045,
  });
});
