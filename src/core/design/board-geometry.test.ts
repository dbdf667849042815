import { expect, test } from "vitest";
import { DomainError } from "../domain-error.ts";
import { boardGeometry, placeStartMm } from "./board-geometry.ts";
import { trialTakes } from "./foresight/takes.ts";

test("patches and gutters fill the board exactly", () => {
  for (const patches of [1, 2, 6, 12]) {
    const g = boardGeometry(1000, 105, patches);
    expect(placeStartMm(g, patches) + g.patchLengthMm + g.gutterMm).toBeCloseTo(1000, 9);
  }
});

test("a board too short for its patches is refused with what would do", () => {
  try {
    boardGeometry(150, 100, 6);
    throw new Error("was not refused");
  } catch (error) {
    if (!(error instanceof DomainError)) throw error;
    expect(error.detail).toMatchObject({ field: "lengthMm", limits: { min: 6 * 25 + 7 * 8 } });
  }
});

test("liquid by hand: 36 patches, 4 coats, 3 mL, a quarter stays in the brush", () => {
  const t = trialTakes({ patches: 36, coats: 4, responses: 1, jars: 6, millilitresPerPatchCoat: 3 });
  expect(t.millilitres).toBe(540);
  expect(t.millilitresPerJar).toBe(90);
  expect(t.hours).toBeCloseTo((288 + 80 + 36) / 60, 12);
});
