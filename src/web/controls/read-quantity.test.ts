import { expect, test } from "vitest";
import { fields, readQuantity, withUnit } from "./read-quantity.ts";

test("a plain amount is kept as typed, and said back in the unit reckoned in", () => {
  expect(readQuantity(" 57 g", fields.mass)).toMatchObject({
    ok: true,
    value: { typed: "57 g", unit: "g", si: 0.057 },
  });
  // 2 oz avoirdupois is 56.699 g (NIST Handbook 44, appendix C).
  const ounces = readQuantity("2 oz", fields.mass);
  expect(ounces.ok && ounces.understood).toBe("56.7 g");
  const air = readQuantity("68 F", fields.airTemperature);
  expect(air.ok && air.understood).toBe("20.0 °C");
  expect(readQuantity("55", fields.relativeHumidity)).toMatchObject({ ok: true, value: { si: 0.55 } });
});

test("an ounce of liquid is asked, and each meaning reads without another question", () => {
  const asked = readQuantity("8 oz", fields.massOrVolume);
  if (asked.ok) throw new Error("8 oz was taken for granted");
  expect(asked.problem.ask).toBe(true);
  const read = asked.problem.meanings.map((m) => readQuantity(m.typed, fields.massOrVolume));
  // 8 US fl oz is 236.588 ml, 8 oz avoirdupois 226.796 g (NIST Handbook 44, appendix C).
  expect(read.map((r) => r.ok && r.value.si)).toEqual([
    expect.closeTo(2.36588e-4, 9),
    expect.closeTo(0.226796, 6),
  ]);
});

test("what does not fit says the range that does", () => {
  const cut = readQuantity("21 lb", fields.cut);
  expect(!cut.ok && cut.problem.says).toBe("21 lb does not fit. From 0.100 lb cut to 8.00 lb cut would do.");
  const air = readQuantity("680", fields.airTemperature);
  expect(!air.ok && air.problem.says).toMatch(/-?30\.0 °C to 60\.0 °C/);
  expect(readQuantity("120 %", fields.relativeHumidity).ok).toBe(false);
  expect(readQuantity("", fields.mass).ok).toBe(false);
});

test.each(Object.entries(fields))(
  "every unit to press beside %s reads as just that, without a question",
  (_, field) => {
    const { units = [] } = readQuantity("", field);
    for (const unit of units) {
      const read = readQuantity(withUnit("1 1/2", unit), field);
      const asks = !read.ok && (read.problem.ask || !/would do\.$/.test(read.problem.says));
      expect(asks, unit).toBe(false); // outside the range is told, and is no question
    }
    expect(units.length > 0 || "bareUnit" in field).toBe(true);
  },
);

test("a unit takes the place of what was typed after the number, and is nothing without one", () => {
  expect(withUnit("57", "g")).toBe("57 g");
  expect(withUnit("8 oz", "fl oz")).toBe("8 fl oz");
  expect(withUnit("1 1/2 cup", "ml")).toBe("1 1/2 ml");
  expect(withUnit("-5", "°C")).toBe("-5 °C");
  expect(withUnit("", "g")).toBe("");
  expect(withUnit("a little", "g")).toBe("a little");
});
