import type { Block, Point } from "./flat-shapes.ts";

/** A shape on the page [CSS px]. */
export interface PlacedShape {
  readonly surface: string;
  readonly outline: readonly Point[];
  readonly middle: Point;
  readonly width: number;
  readonly height: number;
}

export interface PlacedPart {
  /** Where its heading stands. */
  readonly top: number;
  readonly shapes: readonly PlacedShape[];
}

export interface Layout {
  readonly parts: readonly PlacedPart[];
  readonly height: number;
  /** CSS px a millimetre, one for the whole drawing. */
  readonly scale: number;
}

const heading = 30;
const gap = 12;
const afterPart = 22;
/** No block is drawn taller than this, nor wider than half of a desk: both faces of a top stand side by side. */
const tallest = 240;
const phoneWidth = 346;

/** One scale at which the widest block of all has room, and none is too tall. */
export function scaleFor(parts: readonly (readonly Block[])[], width: number): number {
  const blocks = parts.flat();
  const widest = Math.max(1, ...blocks.map((block) => block.width));
  const highest = Math.max(1, ...blocks.map((block) => block.height));
  const room = Math.min(width, Math.max(phoneWidth, (width - gap) / 2));
  return Math.min(room / widest, tallest / highest);
}

function place(block: Block, x: number, y: number, scale: number): PlacedShape[] {
  return block.shapes.map(({ surface, outline }) => {
    const points = outline.map(([px, py]): Point => [x + px * scale, y + py * scale]);
    const [xs, ys] = [points.map(([px]) => px), points.map(([, py]) => py)];
    const [left, right, top, bottom] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
    return {
      surface,
      outline: points,
      middle: [(left + right) / 2, (top + bottom) / 2],
      width: right - left,
      height: bottom - top,
    };
  });
}

/** The blocks of each part side by side under its heading, in as many rows as the width asks for. */
export function layOutParts(parts: readonly (readonly Block[])[], width: number): Layout {
  const scale = scaleFor(parts, width);
  let y = 0;
  const placed = parts.map((blocks): PlacedPart => {
    const top = y;
    let [x, rowHeight] = [0, 0];
    y += heading;
    const shapes = blocks.flatMap((block) => {
      const [w, h] = [block.width * scale, block.height * scale];
      if (x > 0 && x + w > width + 1e-6) {
        y += rowHeight + gap;
        [x, rowHeight] = [0, 0];
      }
      const here = place(block, x, y, scale);
      x += w + gap;
      rowHeight = Math.max(rowHeight, h);
      return here;
    });
    y += rowHeight + afterPart;
    return { top, shapes };
  });
  return { parts: placed, height: y, scale };
}

const roundMm = [10, 20, 50, 100, 200, 500, 1000, 2000];
const roundIn = [1, 2, 4, 6, 12, 24, 48].map((inches) => inches * 25.4);

/** The longest round length that is no wider than so many pixels, for the bar that says the scale [mm]. */
export function barLength(scale: number, unit: "mm" | "in", most: number): number {
  const lengths = unit === "in" ? roundIn : roundMm;
  return lengths.findLast((length) => length * scale <= most) ?? (lengths[0] as number);
}
