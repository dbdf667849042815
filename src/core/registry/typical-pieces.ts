import type { AreaPartInput } from "./area-input.ts";

/** A piece to begin from, taken apart. */
export interface TypicalPiece {
  readonly piece: string;
  readonly parts: readonly (AreaPartInput & { readonly name: string })[];
}

/**
 * Furniture and instruments of usual sizes, all from memory: a start, to be measured on the real one. `name` is an id
 * for which the page has words.
 */
export const typicalPieces = [
  {
    piece: "dining top",
    parts: [{ part: "panel", name: "top", lengthMm: 1800, widthMm: 900, thicknessMm: 30 }],
  },
  {
    piece: "side table",
    parts: [
      { part: "panel", name: "top", lengthMm: 500, widthMm: 500, thicknessMm: 20 },
      { part: "square-leg", name: "legs", lengthMm: 550, topMm: 40, footMm: 25, count: 4 },
      { part: "rail", name: "rails", lengthMm: 400, widthMm: 90, thicknessMm: 20, count: 4 },
    ],
  },
  {
    piece: "dining chair",
    parts: [
      { part: "panel", name: "seat", lengthMm: 450, widthMm: 430, thicknessMm: 30 },
      { part: "square-leg", name: "back legs", lengthMm: 900, topMm: 30, footMm: 38, count: 2 },
      { part: "round-leg", name: "front legs", lengthMm: 430, topMm: 38, footMm: 28, count: 2 },
      { part: "rail", name: "stretchers", lengthMm: 400, widthMm: 40, thicknessMm: 20, count: 4 },
      { part: "rail", name: "top rail", lengthMm: 400, widthMm: 90, thicknessMm: 20 },
      {
        part: "round-leg",
        name: "spindles",
        lengthMm: 350,
        topMm: 12,
        count: 4,
        finished: ["side"],
      },
    ],
  },
  {
    piece: "stool",
    parts: [
      { part: "round-panel", name: "seat", diameterMm: 320, thicknessMm: 30 },
      {
        part: "turned-leg",
        name: "legs",
        profile: [
          { atMm: 0, diameterMm: 26 },
          { atMm: 120, diameterMm: 34 },
          { atMm: 150, diameterMm: 24 },
          { atMm: 180, diameterMm: 36 },
          { atMm: 330, diameterMm: 44 },
          { atMm: 440, diameterMm: 28 },
        ],
        count: 3,
      },
      { part: "round-leg", name: "stretchers", lengthMm: 300, topMm: 18, count: 3, finished: ["side"] },
    ],
  },
  {
    piece: "bookcase",
    parts: [
      {
        part: "carcase",
        name: "case",
        heightMm: 1800,
        widthMm: 800,
        depthMm: 300,
        thicknessMm: 18,
        shelves: 4,
      },
    ],
  },
  {
    piece: "chest of drawers",
    parts: [
      {
        part: "carcase",
        name: "case",
        heightMm: 800,
        widthMm: 900,
        depthMm: 450,
        thicknessMm: 18,
        drawers: 4,
      },
    ],
  },
  {
    piece: "box",
    parts: [
      {
        part: "carcase",
        name: "box",
        heightMm: 150,
        widthMm: 300,
        depthMm: 200,
        thicknessMm: 10,
        finished: [
          "sides",
          "top",
          "bottom",
          "back",
          "front",
          "inside sides",
          "inside top",
          "inside bottom",
          "inside back",
          "inside front",
        ],
      },
    ],
  },
  {
    piece: "panelled door",
    parts: [
      { part: "panel", name: "door", lengthMm: 2000, widthMm: 780, thicknessMm: 40 },
      { part: "moulding", name: "mouldings", lengthMm: 2600, girthMm: 25, count: 4 },
    ],
  },
  {
    piece: "acoustic guitar",
    parts: [
      { part: "free", name: "top", areaM2: 0.15 },
      { part: "free", name: "back", areaM2: 0.15 },
      { part: "free", name: "sides", areaM2: 0.17 },
      { part: "free", name: "neck", areaM2: 0.06 },
    ],
  },
  { piece: "classical guitar", parts: [{ part: "free", name: "outside", areaM2: 0.5 }] },
  { piece: "ukulele", parts: [{ part: "free", name: "outside", areaM2: 0.21 }] },
  { piece: "violin", parts: [{ part: "free", name: "outside", areaM2: 0.165 }] },
] as const satisfies readonly TypicalPiece[];
