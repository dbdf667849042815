import { expect, test } from "vitest";
import { expectNear } from "../../../test/near.ts";
import { Pen, typed } from "../demo/pen.ts";
import { dissolvingView, littleLeft } from "./dissolving.ts";

const start = Date.UTC(2026, 9, 1, 8);
const hour = (h: number): string => new Date(start + h * 3.6e6).toISOString();
const hoursOf = (at: string | null | undefined): number => (Date.parse(at ?? "") - start) / 3.6e6;

/** A jar and its looks: hours, and the percent that was still there. */
function jarWith(looks: readonly (readonly [number, number])[]) {
  const pen = new Pen("dissolving", "Europe/Berlin");
  const spirit = pen.write(hour(-1), "material-bought", { form: "solvent", name: "Ethanol" });
  const jar = pen.write(
    hour(0),
    "batch-mixed",
    {
      code: "L1",
      resins: [{ name: "Lemon", amount: typed("57 g", "mass") }],
      solvents: [{ material: spirit, amount: typed("240 ml", "volume") }],
    },
    { about: [spirit] },
  );
  const look = (h: number, percent: number | null, undissolved: "some" | "none" = "some") =>
    pen.write(
      hour(h),
      "batch-looked-at",
      {
        undissolved,
        ...(percent === null
          ? {}
          : { undissolvedShare: { typed: `${percent} %`, unit: "percent", si: percent / 100 } }),
      },
      { about: [jar] },
    );
  for (const [h, percent] of looks) look(h, percent);
  return { look, view: () => dissolvingView(pen.book, jar) };
}

test("half of what is left goes every four hours: little is left after 4·log2(50) hours, by hand", () => {
  const { view } = jarWith([
    [4, 50],
    [8, 25],
    [12, 12.5],
  ]);
  const found = view();
  expect(found).toMatchObject({ share: 0.125, seen: 3 });
  expectNear(hoursOf(found?.done?.at), 4 * Math.log2(1 / littleLeft), { absolute: 1e-3 });
});

/** V. P. Shah et al., Pharm. Res. 15 (1998) 889, the reference units as means, percent dissolved at 30 to 180 min; R 4.2.2 nls gives τ 63.39, β 1.146 for the units. */
test("a published course: τ and β of its units as R has them give the same time within a twentieth", () => {
  const { view } = jarWith([
    [3, 100 - 34.9166666667],
    [6, 100 - 59.5],
    [9, 100 - 79.2666666667],
    [18, 100 - 95.075],
  ]);
  const byUnits = 6.33887490803 * (-Math.log(littleLeft)) ** (1 / 1.1458042522);
  expectNear(hoursOf(view()?.done?.at), byUnits, { relative: 0.05 });
});

test("one look tells how much, and not yet when; scattered looks leave the end open", () => {
  const one = jarWith([[4, 50]]);
  expect(one.view()).toEqual({ share: 0.5, seen: 1, done: null });
  const rough = jarWith([
    [2, 70],
    [6, 60],
  ]).view();
  expect(rough?.done?.to).toBeNull();
  expect(hoursOf(rough?.done?.from)).toBeGreaterThanOrEqual(6); // at six hours more than half was there
});

test("a look without a share changes nothing; once nothing is left there is nothing to say", () => {
  const jar = jarWith([
    [4, 50],
    [8, 25],
  ]);
  const before = jar.view();
  jar.look(9, null);
  expect(jar.view()).toEqual(before);
  jar.look(20, null, "none");
  expect(jar.view()).toBeNull();
});
