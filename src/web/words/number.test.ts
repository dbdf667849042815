import { expect, test } from "vitest";
import { counted } from "./counted.ts";
import { known, upToDigits, withDigits } from "./number.ts";

test("a value is rounded to what is known of it", () => {
  expect(known(1.5812, 0.0467)).toEqual({ value: "1.58", by: "0.05" });
  expect(known(237.84, 5.1)).toEqual({ value: "238", by: "5" });
  expect(known(2.04, 0.104)).toEqual({ value: "2.04", by: "0.10" });
  expect(known(1234, 52)).toEqual({ value: "1230", by: "50" });
  expect(known(-0.31, 0.3)).toEqual({ value: "−0.3", by: "0.3" });
  expect(known(20, 0)).toEqual({ value: "20.00", by: "0" });
});

test("significant figures never fall into an exponent", () => {
  expect(withDigits(285.15, 3)).toBe("285");
  expect(withDigits(0.01234, 2)).toBe("0.012");
  expect(withDigits(1234567, 2)).toBe("1200000");
  expect(withDigits(0, 3)).toBe("0");
  expect(withDigits(-0.0001, 1)).toBe("−0.0001");
  expect(withDigits(9.999, 3)).toBe("10.0");
});

test("small counts are words", () => {
  expect([0, 1, 5, 12, 13].map(counted)).toEqual(["no", "one", "five", "twelve", "13"]);
});

test.each([
  [96, 4, "96"],
  [99.5, 4, "99.5"],
  [100, 4, "100"],
  [1000, 4, "1000"],
  [0.5, 2, "0.5"],
])("%d to at most %d figures", (value, digits, said) => {
  expect(upToDigits(value, digits)).toBe(said);
});
