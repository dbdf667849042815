import { expect, test } from "vitest";
import { readQr } from "../../../test/read-qr.ts";
import { qrPath } from "./qr-path.ts";

test("a reader finds the jar's address in what is drawn", () => {
  const address = "http://192.168.178.20:4180/jars/019a0000-0000-7000-8000-000000000001";
  expect(readQr(qrPath(address).path)).toBe(address);
});

test("the quiet zone is left white (ISO/IEC 18004: four modules)", () => {
  const { size, path } = qrPath("x");
  for (const [, x, y] of path.matchAll(/M(\d+) (\d+)h/g)) {
    expect(Math.min(Number(x), Number(y))).toBeGreaterThanOrEqual(4);
    expect(Number(y)).toBeLessThan(size - 4);
  }
});
