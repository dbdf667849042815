import { expect, test } from "vitest";
import { expectNear } from "../../../test/near.ts";
import { Pen, typed } from "../demo/pen.ts";
import type { Body } from "../notebook/kinds/all.ts";
import { sittingVapour } from "./sitting-vapour.ts";

const minute = (m: number): string => new Date(Date.UTC(2026, 9, 1, 17, 0) + m * 6e4).toISOString();

/** A jar of 2 lb in pure ethanol and a board of a tenth of a square metre, coated before the sitting and in it. */
function shop() {
  const pen = new Pen("vapour", "Europe/Berlin");
  const material = { form: "solvent", name: "ethanol", solvent: { alcohol: "ethanol" } } as const;
  const spirit = pen.write(minute(-300), "material-bought", material);
  const jar = pen.write(
    minute(-200),
    "batch-mixed",
    {
      code: "J",
      resins: [{ name: "flakes", amount: typed("239.65 g", "mass") }],
      solvents: [{ material: spirit, amount: typed("1 l", "volume") }],
    },
    { about: [spirit] },
  );
  const size = { lengthMm: 500, widthMm: 200 };
  const board = pen.write(minute(-100), "board-cut", { name: "B", wood: "ash", plank: "P", ...size });
  const coat = (at: number, more: Partial<Body<"layer-applied">> = {}) =>
    pen.write(
      minute(at),
      "layer-applied",
      { sort: "coat", targets: [{ board }], from: [{ batch: jar }], method: "brush", ...more },
      { about: [board, jar] },
    );
  return { pen, coat };
}

test("without a sitting there is nothing to say, and coats before it are gone", () => {
  const { pen, coat } = shop();
  coat(-60);
  expect(sittingVapour(pen.book)).toBeNull();
  pen.write(minute(0), "sitting-begun", {});
  expect(sittingVapour(pen.book)).toMatchObject({ coats: 0, solvent: null });
});

// By hand: 100 g of a liquid that is 239.65 g of resin to 789.2 g of ethanol holds 76.7 g of ethanol, 97.2 mL.
test("what was weighed goes into the air but for its resin", () => {
  const { pen, coat } = shop();
  pen.write(minute(0), "sitting-begun", {});
  coat(5, { method: "pad", amount: { by: "weighings", total: typed("100 g", "mass") } });
  const found = sittingVapour(pen.book);
  expect(found).toMatchObject({ coats: 1, assumed: 0, unknown: 0 });
  expectNear((found?.solvent?.volume ?? 0) * 1e6, (100 * 789.2) / (789.2 + 239.65) / 0.7892, {
    relative: 1e-3,
  });
  expectNear(found?.solvent?.composition.ethanol ?? 0, 1, { relative: 1e-9 });
});

// 114 µm on 0.1 m² is 11.4 mL of liquid, of which 83.4 % by volume is solvent at 2 lb.
test("without an amount the method's usual is taken and said; a varnish nobody knows is counted apart", () => {
  const { pen, coat } = shop();
  pen.write(minute(0), "sitting-begun", {});
  coat(5);
  coat(10, { from: [{ name: "a varnish" }] });
  const found = sittingVapour(pen.book);
  expect(found).toMatchObject({ coats: 2, assumed: 1, unknown: 1 });
  expectNear((found?.solvent?.volume ?? 0) * 1e6, 11.4 * 0.8341, { relative: 2e-3 });
});
