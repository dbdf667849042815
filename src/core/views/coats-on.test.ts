import { expect, test } from "vitest";
import { Pen } from "../demo/pen.ts";
import type { ScheduleStep } from "../notebook/kinds/pieces.ts";
import { pieceCoats } from "./bench-pieces.ts";
import { coatsOn } from "./coats-on.ts";
import { pieceView } from "./piece.ts";
import { ownUse, plannedUsed } from "./planned-used.ts";

const at = "2026-10-05T18:00:00.000Z";
const step = (n: number, what: "coat" | "de-nib", surface?: string): ScheduleStep => ({
  step: String(n),
  what,
  ...(surface === undefined ? {} : { surface }),
  day: "2026-10-05",
  at: `18:0${n}`,
  ...(what === "coat" ? { millilitres: surface === "top" ? 60 : 40, minutes: 10 } : {}),
});
const sides = [
  step(1, "coat", "underside"),
  step(2, "coat", "top"),
  step(3, "de-nib", "underside"),
  step(4, "de-nib", "top"),
  step(5, "coat", "underside"),
  step(6, "coat", "top"),
];

function planned(steps: readonly ScheduleStep[]) {
  const pen = new Pen("surfaces", "Europe/Berlin");
  const area = { typed: "1 m²", unit: "m2", si: 1 };
  const piece = pen.write(at, "piece-described", { name: "Table top", area });
  const recipe = { cutLbPerGal: 2, coats: 2, method: "brush" as const };
  pen.write(
    at,
    "piece-scheduled",
    { recipe, steps: [...steps], millilitresPerM2PerCoat: 50 },
    { about: [piece] },
  );
  const view = () => {
    const found = pieceView(pen.book, piece);
    if (found === null) throw new Error("no piece");
    return found;
  };
  const put = (coat: number, surface?: string, ml?: number) => {
    const total = { typed: `${ml} mL`, unit: "ml", si: (ml ?? 0) * 1e-6 };
    const body = {
      sort: "coat" as const,
      method: "brush" as const,
      targets: [{ piece }],
      from: [],
      planned: { coat, ...(surface === undefined ? {} : { surface }) },
      ...(ml === undefined ? {} : { amount: { by: "jug" as const, total } }),
    };
    pen.write(at, "layer-applied", body, { about: [piece] });
  };
  return { pen, view, put };
}

test("side by side: a coat is on when it is on every side, and the bench asks for the next side", () => {
  const { pen, view, put } = planned(sides);
  expect(coatsOn(view()).next).toEqual({ coat: 1, surface: "underside" });
  put(1, "underside");
  expect([...coatsOn(view()).whole.keys()]).toEqual([]);
  expect(pieceCoats(pen.book)).toMatchObject([{ coat: 1, surface: "top", at: "18:02" }]);
  put(1, "top");
  expect([...coatsOn(view()).whole.keys()]).toEqual([1]);
  expect(coatsOn(view()).next).toEqual({ coat: 2, surface: "underside" });
  put(2); // written down of the whole piece
  expect([...coatsOn(view()).whole.keys()]).toEqual([1, 2]);
  expect(coatsOn(view()).next).toBeUndefined();
  expect(pieceCoats(pen.book)).toEqual([]);
});

test("a schedule from before there were sides counts its coats as before", () => {
  const { view, put } = planned([step(1, "coat"), step(2, "de-nib"), step(3, "coat")]);
  put(1);
  expect([...coatsOn(view()).whole.keys()]).toEqual([1]);
  expect(coatsOn(view()).next).toEqual({ coat: 2 });
});

// By hand: 40 and 60 mL are planned for the sides of a square metre; 44 went on the one, 66 on the other, 120 on the whole.
test("each side stands beside its plan, one that was written down of the whole stands as one, and together they are coats", () => {
  const { pen, view, put } = planned(sides);
  put(1, "underside", 44);
  put(1, "top", 66);
  put(2, undefined, 120);
  const { coats, liquid } = plannedUsed(view(), null);
  expect(
    coats.map(({ coat, surface, share, plannedMl, usedMl }) => [
      ...[coat, surface, share, plannedMl],
      Math.round(usedMl ?? 0),
    ]),
  ).toEqual([
    [1, "underside", 0.4, 40, 44],
    [1, "top", 0.6, 60, 66],
    [2, undefined, 1, 100, 120],
  ]);
  expect(liquid).toEqual({ coats: 2, planned: 200, used: expect.closeTo(230, 9) });
  expect(ownUse(pen.book, "brush", () => null).millilitresPerM2).toBeNull(); // two coats are no three
});
