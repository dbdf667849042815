import { expect, test } from "vitest";
import { emptyStrength, readStrength } from "./draft.ts";

const ethanol = (strength: string, basis: "volume" | "mass" | "proof" = "volume") =>
  readStrength({ ...emptyStrength, strength, basis });

// OIML R 22: 95 % by volume at 20 °C is 92.41 % by mass.
test("95 % by volume is 92.4 % by weight, and 190 proof about the same", () => {
  const read = ethanol("95");
  expect(read.ok && read.composition.ethanol).toBeCloseTo(0.9241, 3);
  const proof = ethanol("190", "proof");
  expect(proof.ok && proof.composition.ethanol).toBeCloseTo(0.924, 2);
});

test("a decimal comma and a percent sign are read", () => {
  const read = ethanol("99,5 %", "mass");
  expect(read.ok && read.composition.ethanol).toBeCloseTo(0.995, 9);
});

test.each([
  ["", "empty"],
  ["101", "not a number"],
  ["-5", "not a number"],
  ["strong", "not a number"],
  ["0", "not a number"],
])("a strength of %j is refused", (typed, fault) => {
  expect(ethanol(typed)).toMatchObject({ ok: false, fault });
});

const sheet = (...shares: [string, string][]) =>
  readStrength({
    ...emptyStrength,
    how: "sheet",
    parts: shares.map(([component, share]) => ({ component: component as "ethanol", share })),
  });

test("what is missing to 100 on a data sheet is taken as not named", () => {
  const read = sheet(["ethanol", "90"], ["isopropanol", "5"], ["mek", "3"]);
  expect(read.ok && read.composition.unknown).toBeCloseTo(0.02, 9);
});

test("more than 100 in all is refused with its sum", () => {
  expect(sheet(["ethanol", "90"], ["isopropanol", "15"])).toEqual({ ok: false, fault: "over 100", sum: 105 });
});
