import { describe, expect, test } from "vitest";
import { expectNear } from "../../../../test/near.ts";
import { typicalPieces } from "../../../core/registry/typical-pieces.ts";
import { draftsFromKept, keptParts } from "./kept-parts.ts";
import { countedOf, draftOf, emptyPart, turned } from "./part-draft.ts";
import { areaText, partsFigures, timesFrom } from "./parts-total.ts";
import { bareUnitOf } from "./read-part.ts";

const panel = (length: string, width: string, thickness: string) => ({
  ...emptyPart("panel"),
  sizes: { length, width, thickness },
});

describe("in the units of the person", () => {
  // By hand: a top of 72 × 36 × 1¼ in has 2·72·36 + 2·108·1.25 = 5454 sq in, 37.875 sq ft, 3.5187 m².
  test("a number alone is inches once inches were written", () => {
    const figures = partsFigures([panel('72"', "36", "1 1/4")], 2);
    expect(figures.unit).toBe("in");
    expectNear(figures.total?.areaM2 ?? 0, 5454 * 0.0254 ** 2, { relative: 1e-9 });
    expect(areaText(figures.total?.areaM2 ?? 0, "in")).toBe("37.9 sq ft");
  });

  test("and millimetres otherwise", () => {
    const figures = partsFigures([panel("1.8 m", "900", "3 cm")], 2);
    expectNear(figures.total?.areaM2 ?? 0, 3.402, { relative: 1e-9 });
    expect(areaText(3.402, "mm")).toBe("3.40 m²");
  });

  test.each([
    ["", "mm"],
    ["900", "mm"],
    ["2 ft", "in"],
    ["6′", "in"],
    ["1½ inch", "in"],
    ["30 min", "mm"],
    ["16 sq ft", "in"],
    ["1.5 m²", "mm"],
  ])("%s", (length, unit) => {
    expect(bareUnitOf([panel(length, "", "")])).toBe(unit);
  });
});

test("a part that does not fit holds up none of the others", () => {
  const figures = partsFigures(
    [panel("1800", "900", "30"), panel("1800", "900", ""), panel("1800", "x", "30")],
    2,
  );
  expectNear(figures.total?.areaM2 ?? 0, 3.402, { relative: 1e-9 });
  expect(figures.notCounted).toBe(2);
});

test("a profile is read a line a place, and a line that is none is named", () => {
  const leg = { ...emptyPart("turned-leg"), profile: "0: 40\n300 mm: 4 cm\n" };
  // By hand: a cylinder of 40 by 300, and its foot of 40: π·0.04·0.3 + π·0.02².
  expectNear(partsFigures([leg], 2).total?.areaM2 ?? 0, Math.PI * (0.012 + 0.0004), { relative: 1e-9 });
  const [wrong] = partsFigures([{ ...leg, profile: "0: 40\nfoot" }], 2).parts;
  expect(wrong?.reading.profile).toEqual({ ok: false, line: "foot" });
});

test("a surface is turned on and off, and the usual ones stand until then", () => {
  const rail = emptyPart("rail");
  expect(countedOf(rail)).toEqual(["face", "back", "upper", "lower"]);
  expect(countedOf(turned(rail, "back"))).toEqual(["face", "upper", "lower"]);
  expect(countedOf(turned(turned(rail, "back"), "left"))).toEqual(["face", "upper", "lower", "left"]);
  expect(countedOf({ ...emptyPart("carcase"), drawers: "3" })).toContain("drawer fronts");
});

test.each(typicalPieces.map(({ piece, parts }) => [piece, parts] as const))(
  "%s, typed and kept and read again, is as large as it was",
  (_, parts) => {
    const drafts = parts.map((part) => draftOf(part, part.name));
    const first = partsFigures(drafts, 2);
    expect(first.notCounted).toBe(0);
    const again = partsFigures(draftsFromKept(keptParts(first.parts)), 2);
    expectNear(again.total?.areaM2 ?? 0, first.total?.areaM2 ?? 1, { relative: 1e-12 });
    expect(again.parts.map((part) => part.draft.name)).toEqual(parts.map((part) => part.name));
  },
);

test("what was typed in inches without saying so still is when it comes out of the notebook", () => {
  const first = partsFigures([panel("72 in", "36", "1 1/4")], 2);
  const drafts = draftsFromKept(keptParts(first.parts));
  expect(drafts[0]?.sizes).toMatchObject({ length: "72 in", width: "36 in", thickness: "1 1/4 in" });
  expect(draftsFromKept([{ part: "drum", count: 1, sizes: {}, finished: [] }])).toEqual([]);
});

test.each([
  ["2", 2],
  ["1,5", 1.5],
  ["0.5", undefined],
  ["", undefined],
  ["many", undefined],
])("end grain takes %s times as much", (text, times) => {
  expect(timesFrom(text)).toBe(times);
});
