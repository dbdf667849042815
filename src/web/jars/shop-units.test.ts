import { expect, test } from "vitest";
import { Pen, typed } from "../../core/demo/pen.ts";
import { jarView } from "../../core/views/jar.ts";
import { filledInOunces, inOunces, massText, volumeText } from "./shop-units.ts";

test("ounces, pounds, cups and gallons are one way of thinking, grams and litres the other", () => {
  expect(["oz", "lb", "floz-us", "cup-us", "gal-imp"].map(inOunces)).toEqual([true, true, true, true, true]);
  expect(["g", "kg", "ml", "l"].map(inOunces)).toEqual([false, false, false, false]);
});

// NIST Handbook 44, appendix C: 1 fl oz is 29.57 mL, 1 oz is 28.35 g.
test("both are said to who thinks in ounces", () => {
  expect(volumeText(236.588e-6, true)).toBe("237 mL (8.0 fl oz)");
  expect(massText(0.0566990462, true)).toBe("57 g (2.0 oz)");
  expect(volumeText(236.588e-6, false)).toBe("237 mL");
});

test("a jar let down from one that was mixed in ounces is in ounces too", () => {
  const at = "2026-10-01T08:00:00.000Z";
  const pen = new Pen("ounces", "America/New_York");
  const stock = pen.write(at, "batch-mixed", {
    code: "A",
    resins: [{ name: "Lemon", amount: typed("4 oz", "mass") }],
    solvents: [{ name: "Alcohol", amount: typed("1 pint", "volume") }],
  });
  const child = pen.write(
    at,
    "batch-thinned",
    {
      code: "B",
      taken: typed("100 ml", "volume"),
      added: [{ name: "Alcohol", amount: typed("50 ml", "volume") }],
    },
    { about: [stock] },
  );
  const jar = jarView(pen.book, child);
  expect(jar === null ? null : filledInOunces(pen.book, jar)).toBe(true);
});
