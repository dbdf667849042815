import { expect, test } from "vitest";
import { idSchema } from "./entry.ts";
import { newEntryId } from "./entry-id.ts";
import { compareInstants, epochMilliseconds } from "./instant.ts";

test("newEntryId: the layout of the example in RFC 9562, appendix A.6", () => {
  // unix_ts_ms 0x017F22E279B0, rand_a 0xCC3, rand_b 0x18C4DC0C0C07398F
  const bytes = [0x18, 0xc4, 0xdc, 0x0c, 0x0c, 0x07, 0x39, 0x8f];
  const id = newEntryId("2022-02-22T19:22:22.000Z", 0xcc3, () => Uint8Array.from(bytes));
  expect(id).toBe("017f22e2-79b0-7cc3-98c4-dc0c0c07398f");
});

test("newEntryId: version 7 and variant 10 whatever the bytes, and in the order of one device's numbers", () => {
  const ids = [0, 1, 2, 4095].map((seq, i) =>
    newEntryId("2026-10-05T18:30:00Z", seq, (n) => new Uint8Array(n).fill([255, 0, 170, 85][i] as number)),
  );
  for (const id of ids) {
    expect(idSchema.safeParse(id).success).toBe(true);
    expect(id).toMatch(/^.{14}7.{4}[89ab]/);
  }
  expect([...ids].sort()).toEqual(ids);
});

test.each([
  "1970-01-01T00:00:00Z",
  "2022-02-22T19:22:22.000Z",
  "2024-02-29T23:59:59.9Z",
  "2026-11-25T09:48:40.311999Z",
])("epochMilliseconds: %s as the language's own reader has it", (instant) => {
  expect(epochMilliseconds(instant)).toBe(Date.parse(instant));
});

test.each([
  ["2026-10-05T18:30:00Z", "2026-10-05T18:30:00.5Z", -1],
  ["2026-10-05T18:30:00.5Z", "2026-10-05T18:30:00.50Z", 0],
  ["2026-10-05T18:30:00Z", "2026-10-05T18:30:00.000000000Z", 0],
  ["2026-10-05T18:30:00.123456789Z", "2026-10-05T18:30:00.12345679Z", -1],
  ["2026-10-05T18:30:01Z", "2026-10-05T18:30:00.999Z", 1],
])("compareInstants: %s against %s", (a, b, sign) => {
  expect(Math.sign(compareInstants(a, b))).toBe(sign);
  expect(Math.sign(compareInstants(b, a))).toBe(-sign + 0);
});
