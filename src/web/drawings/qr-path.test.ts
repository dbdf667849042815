import { decodeQR } from "qr/decode.js";
import { expect, test } from "vitest";
import { qrPath } from "./qr-path.ts";

/** The drawing's bars painted at so many dots a module, as a camera would see them. */
function painted(text: string, dots: number) {
  const { size, path } = qrPath(text);
  const side = size * dots;
  const data = new Uint8Array(side * side * 4).fill(255);
  for (const [, x, y, width] of path.matchAll(/M(\d+) (\d+)h(\d+)v1H\d+z/g))
    for (let row = Number(y) * dots; row < (Number(y) + 1) * dots; row++)
      for (let column = Number(x) * dots; column < (Number(x) + Number(width)) * dots; column++)
        data.fill(0, (row * side + column) * 4, (row * side + column) * 4 + 3);
  return { width: side, height: side, data };
}

test("a reader finds the jar's address in what is drawn", () => {
  const address = "http://192.168.178.20:4180/jars/019a0000-0000-7000-8000-000000000001";
  expect(decodeQR(painted(address, 6))).toBe(address);
});

test("the quiet zone is left white (ISO/IEC 18004: four modules)", () => {
  const { size, path } = qrPath("x");
  for (const [, x, y] of path.matchAll(/M(\d+) (\d+)h/g)) {
    expect(Math.min(Number(x), Number(y))).toBeGreaterThanOrEqual(4);
    expect(Number(y)).toBeLessThan(size - 4);
  }
});
