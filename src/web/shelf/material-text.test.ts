import { expect, test } from "vitest";
import { compositionOf } from "../../core/jar/makeup.ts";
import type { MaterialView } from "../../core/views/material.ts";
import { factsOf, strengthWords } from "./material-text.ts";

const bottle = (solvent: Record<string, unknown>): MaterialView => {
  const made = compositionOf(solvent);
  return {
    form: "solvent",
    solvent,
    composition: "composition" in made ? made.composition : null,
  } as MaterialView;
};

// Ethanol of 96 % by volume is 93.84 % by mass, of 95 % (190 US proof) 92.42 % (OIML R 22).
test.each([
  [{ alcohol: "ethanol", volumeFraction: 0.96 }, "96 % by volume. By weight: 93.8 % ethanol, 6.16 % water."],
  [{ alcohol: "ethanol", usProof: 190 }, "190 US proof. By weight: 92.4 % ethanol, 7.58 % water."],
  [{ alcohol: "isopropanol", massFraction: 0.99 }, "By weight: 99.0 % isopropanol, 1.00 % water."],
  [{ alcohol: "n-propanol" }, "No strength told: taken as pure. By weight: 100 % n-propanol."],
])("%j", (solvent, says) => {
  expect(strengthWords(bottle(solvent))).toBe(says);
});

const pound = (kg: number): MaterialView =>
  ({
    form: "resin",
    usedUp: false,
    left: { kg, m3: null },
    lot: "lot 9",
    bought: "2025-10-12",
    price: { currency: "EUR", perKg: 46, perM3: null },
  }) as MaterialView;

test("what is left, lot, day, age and price stand in one line", () => {
  expect(factsOf(pound(0.344), "2026-10-14T08:00:00Z", "2026-10-14")).toBe(
    "344 g left, lot 9, bought Sun 12 Oct 2025, 12 months ago, 4.60 EUR for 100 g",
  );
});

test("more taken than was bought is said as such", () => {
  expect(factsOf(pound(-0.012), "2026-10-14T08:00:00Z", "2026-10-14")).toMatch(
    /^12 g more was taken than was bought, /,
  );
});
