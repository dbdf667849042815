export type Point = readonly [x: number, y: number];

/** One surface, or a piece of one, flat on the paper [mm]. */
export interface Shape {
  readonly surface: string;
  readonly outline: readonly Point[];
}

/** Shapes that hang together, within a box from 0, 0 [mm]. */
export interface Block {
  readonly width: number;
  readonly height: number;
  readonly shapes: readonly Shape[];
}

/** A rectangle at a place. */
export const rect = (surface: string, x: number, y: number, width: number, height: number): Shape => ({
  surface,
  outline: [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ],
});

/** A rectangle by itself. */
export const alone = (surface: string, width: number, height: number): Block => ({
  width,
  height,
  shapes: [rect(surface, 0, 0, width, height)],
});

/** A circle by itself, to a third of a part in a hundred; none of no diameter. */
export function disc(surface: string, diameter: number): Block[] {
  if (diameter === 0) return [];
  const r = diameter / 2;
  const outline = Array.from({ length: 64 }, (_, i): Point => {
    const turn = (i / 64) * 2 * Math.PI;
    return [r + r * Math.cos(turn), r + r * Math.sin(turn)];
  });
  return [{ width: diameter, height: diameter, shapes: [{ surface, outline }] }];
}

/** Half widths down a length, as seen from the side. */
export function silhouette(surface: string, places: readonly Point[]): Block {
  const widest = Math.max(...places.map(([, half]) => half));
  const from = places[0]?.[0] ?? 0;
  const down = places.map(([at, half]): Point => [widest + half, at - from]);
  const up = places.map(([at, half]): Point => [widest - half, at - from]).reverse();
  return {
    width: 2 * widest,
    height: (places.at(-1)?.[0] ?? 0) - from,
    shapes: [{ surface, outline: [...down, ...up] }],
  };
}

/** Laid on its side, its top to the left: a leg takes less room so. */
export const lying = ({ width, height, shapes }: Block): Block => ({
  width: height,
  height: width,
  shapes: shapes.map(({ surface, outline }) => ({
    surface,
    outline: outline.map(([x, y]): Point => [y, x]),
  })),
});

/** Side by side without a gap. */
export function joined(blocks: readonly Block[]): Block {
  let x = 0;
  const shapes = blocks.flatMap((block) => {
    const at = x;
    x += block.width;
    return block.shapes.map(({ surface, outline }) => ({
      surface,
      outline: outline.map(([px, py]): Point => [px + at, py]),
    }));
  });
  return { width: x, height: Math.max(...blocks.map((block) => block.height)), shapes };
}

const longest = 2400;
/** A long strip is drawn in lengths that lie under one another. */
export function strip(surface: string, length: number, width: number): Block {
  const rows = Math.ceil(length / longest - 1e-9);
  const shapes = Array.from({ length: rows }, (_, i) =>
    rect(surface, 0, i * width, Math.min(longest, length - i * longest), width),
  );
  return { width: Math.min(longest, length), height: rows * width, shapes };
}
