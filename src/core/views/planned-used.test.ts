import { expect, test } from "vitest";
import { Pen } from "../demo/pen.ts";
import type { Body } from "../notebook/kinds/all.ts";
import { pieceView } from "./piece.ts";
import { ownUse, plannedUsed } from "./planned-used.ts";

const at = "2026-10-05T18:00:00.000Z";
const desk = () => new Pen("planned and used", "Europe/Berlin");

function pieceOn(d: Pen, areaM2: number, method: "brush" | "pad", coats: number): string {
  const area = { typed: `${areaM2} m²`, unit: "m2", si: areaM2 };
  const piece = d.write(at, "piece-described", { name: "Table top", area });
  d.write(
    at,
    "piece-scheduled",
    {
      recipe: { cutLbPerGal: 2, coats, method },
      steps: Array.from({ length: coats }, (_, i) => ({
        step: String(i + 1),
        what: "coat" as const,
        day: "2026-10-05",
        millilitres: 114 * areaM2 * (i === 0 ? 1.2 : 1),
        minutes: 12 * areaM2,
      })),
      millilitresPerM2PerCoat: 114,
    },
    { about: [piece] },
  );
  return piece;
}

function coatOn(
  d: Pen,
  piece: string,
  coat: number,
  more: Partial<Body<"layer-applied">> = {},
  happened = at,
): void {
  const body = { sort: "coat", targets: [{ piece }], from: [], method: "brush", planned: { coat } } as const;
  d.write(
    happened,
    "layer-applied",
    { ...body, targets: [{ piece }], from: [], ...more },
    { about: [piece] },
  );
}
const poured = (ml: number) => ({
  amount: { by: "jug" as const, total: { typed: `${ml} mL`, unit: "ml", si: ml * 1e-6 } },
});
const weighed = (g: number) => ({
  amount: { by: "weighings" as const, total: { typed: `${g} g`, unit: "g", si: g * 1e-3 } },
});

function shown(d: Pen, piece: string) {
  const view = pieceView(d.book, piece);
  if (view === null) throw new Error("no piece");
  return view;
}

test("each coat stands beside its plan; what was not written stays empty and is not compared", () => {
  const d = desk();
  const piece = pieceOn(d, 2, "brush", 3);
  coatOn(d, piece, 1, { ...poured(300), minutes: 30 });
  coatOn(d, piece, 2);
  const { coats, liquid, hands } = plannedUsed(shown(d, piece), null);
  expect(coats.map((c) => c.usedMl)).toEqual([300, null, null]);
  expect(coats.map((c) => c.onAt === null)).toEqual([false, false, true]);
  expect(liquid).toEqual({ coats: 1, planned: expect.closeTo(273.6, 9), used: 300 });
  expect(hands).toEqual({ coats: 1, planned: 24, used: 30 });
});

// The density of 2 lb in 95 % ethanol from the mixing example of the trade's arithmetic: 57 g and 192.98 g make 285.15 mL.
test("a weighing becomes millilitres by the liquid's density, and is left out where that is not known", () => {
  const d = desk();
  const piece = pieceOn(d, 2, "brush", 1);
  coatOn(d, piece, 1, weighed(249.98));
  const density = (57 + 192.98) / 285.15;
  expect(plannedUsed(shown(d, piece), density).coats[0]?.usedMl).toBeCloseTo(285.15, 9);
  expect(plannedUsed(shown(d, piece), null).liquid.coats).toBe(0);
});

// The ratio estimate, total over total (W. G. Cochran, Sampling Techniques, 3rd ed., section 6.1), not the mean of ratios.
test("one's own use is all that was used over all that it covered, one method at a time, from three coats on", () => {
  const d = desk();
  const small = pieceOn(d, 1, "brush", 2);
  coatOn(d, small, 1, poured(180));
  coatOn(d, small, 2, poured(100));
  const large = pieceOn(d, 4, "brush", 1);
  coatOn(d, large, 1, { ...poured(600), minutes: 40 });
  const timed = pieceOn(d, 2, "brush", 2);
  for (const coat of [1, 2]) coatOn(d, timed, coat, { minutes: 25 });
  const padded = pieceOn(d, 1, "pad", 1);
  coatOn(d, padded, 1, poured(999));
  const own = ownUse(d.book, "brush", () => null);
  expect(own.millilitresPerM2?.value).toBeCloseTo((180 + 100 + 600) / (1.2 + 1 + 4 * 1.2), 9);
  expect(own.millilitresPerM2?.coats).toBe(3);
  expect(own.minutesPerM2).toEqual({ value: (40 + 25 + 25) / (4 + 2 + 2), coats: 3 });
  const none = { millilitresPerM2: null, minutesPerM2: null, leastWaitMinutes: null };
  expect(ownUse(d.book, "pad", () => null)).toEqual(none);
});

// The median: the middle one, or half-way between the two in the middle (ISO 3534-1:2006, 1.13).
test("one's own wait is the middle of those within an evening, from the end of a coat to the beginning of the next", () => {
  const d = desk();
  const piece = pieceOn(d, 1, "brush", 6);
  const on = (coat: number, happened: string, more: Partial<Body<"layer-applied">> = {}) =>
    coatOn(d, piece, coat, more, happened);
  on(1, "2026-10-05T16:00:00.000Z");
  on(2, "2026-10-05T18:22:00.000Z"); // twelve minutes planned for it: begun at 18:10, 130 after coat 1
  on(3, "2026-10-05T21:12:00.000Z", { minutes: 20 }); // begun at 20:52, 150 after coat 2
  on(4, "2026-10-06T16:00:00.000Z"); // a night
  on(5, "2026-10-06T18:32:00.000Z"); // begun at 18:20, 140 after coat 4
  const { coats } = plannedUsed(shown(d, piece), null);
  expect(coats.map((c) => c.waitedMinutes)).toEqual([130, 150, 18 * 60 + 36, 140, null, null]);
  const own = () => ownUse(d.book, "brush", () => null).leastWaitMinutes;
  expect(own()).toEqual({ value: 140, coats: 3 });
  on(6, "2026-10-06T21:04:00.000Z"); // begun at 20:52, 140 after coat 5
  expect(own()).toEqual({ value: 140, coats: 4 });
});

test("a coat that cannot have begun after the one before it tells no wait", () => {
  const d = desk();
  const piece = pieceOn(d, 1, "brush", 2);
  coatOn(d, piece, 1);
  coatOn(d, piece, 2); // at the same minute
  expect(plannedUsed(shown(d, piece), null).coats[0]?.waitedMinutes).toBeNull();
});
