import { decodeQR } from "qr/decode.js";

const dots = 6;

/** What a reader finds in a code that is drawn in bars: painted at so many dots a module, as a camera would see it. */
export function readQr(path: string): string {
  const bars = [...path.matchAll(/M(\d+) (\d+)h(\d+)v1H\d+z/g)].map(([, x, y, width]) => ({
    x: Number(x),
    y: Number(y),
    width: Number(width),
  }));
  const quiet = Math.min(...bars.map(({ x }) => x));
  const side = (Math.max(...bars.map(({ x, width }) => x + width)) + quiet) * dots;
  const data = new Uint8Array(side * side * 4).fill(255);
  for (const { x, y, width } of bars)
    for (let row = y * dots; row < (y + 1) * dots; row++)
      for (let column = x * dots; column < (x + width) * dots; column++)
        data.fill(0, (row * side + column) * 4, (row * side + column) * 4 + 3);
  return decodeQR({ width: side, height: side, data });
}
