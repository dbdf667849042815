import { expect, test } from "vitest";
import { Pen } from "../demo/pen.ts";
import { piecePlans } from "./piece-plans.ts";

const at = "2026-10-05T18:00:00.000Z";

test("plans are counted as they change: written anew, struck out, and those of other pieces not at all", () => {
  const d = new Pen("plans of a piece", "Europe/Berlin");
  const area = { typed: "1 m²", unit: "m2", si: 1 };
  const [top, other] = ["Table top", "Chair"].map((name) => d.write(at, "piece-described", { name, area }));
  const plan = (piece: string | undefined, coats: number, strikes: string[] = []) =>
    d.write(
      at,
      "piece-scheduled",
      {
        recipe: { cutLbPerGal: 2, coats, method: "pad" },
        steps: Array.from({ length: coats }, (_, i) => ({ step: String(i + 1), what: "coat" as const })),
        millilitresPerM2PerCoat: 57,
      },
      { about: [piece ?? ""], strikes },
    );
  const seen = () => {
    const { changes, steps } = piecePlans(d.book.ordered(), top ?? "");
    return [changes, steps.map((s) => s.length)];
  };
  expect(seen()).toEqual([0, []]);
  const first = plan(top, 3);
  plan(other, 5);
  expect(seen()).toEqual([0, [3]]);
  const second = plan(top, 2, [first]);
  expect(seen()).toEqual([1, [3, 2]]);
  d.write(at, "struck", {}, { strikes: [second] });
  expect(seen()).toEqual([2, [3, 2]]);
});
