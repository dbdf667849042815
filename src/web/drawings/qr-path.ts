import { encodeQR } from "qr";

/** Modules of white around a code, so that a reader finds it. Source: ISO/IEC 18004:2024, 6.3.8. */
const quietZone = 4;

export interface QrDrawing {
  /** Of the code with its quiet zone, in modules. */
  readonly size: number;
  /** One path, a unit square a dark module. */
  readonly path: string;
}

/** A text as a code to be drawn: rows of dark modules joined into bars, so that a printer leaves no hairlines. */
export function qrPath(text: string): QrDrawing {
  const modules = encodeQR(text, "raw", { ecc: "medium", border: quietZone });
  const bars = modules.flatMap((row, y) => {
    const found: string[] = [];
    for (let x = 0; x < row.length; x++) {
      if (!row[x]) continue;
      let end = x;
      while (row[end]) end++;
      found.push(`M${x} ${y}h${end - x}v1H${x}z`);
      x = end;
    }
    return found;
  });
  return { size: modules.length, path: bars.join("") };
}
