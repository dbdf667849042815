import type { Metre } from "../units.ts";
import type { ProfilePoint } from "./girth.ts";
import type { Station } from "./revolution.ts";

/** What a piece is taken apart into to work out its area. */
export const partKinds = [
  "panel",
  "round-panel",
  "rail",
  "round-leg",
  "square-leg",
  "turned-leg",
  "moulding",
  "carcase",
  "free",
] as const;
export type PartKind = (typeof partKinds)[number];

/** The surfaces of each kind of part, by the names that say which of them are finished. */
export const surfaceNames = {
  panel: ["top", "underside", "front", "back", "left", "right"],
  "round-panel": ["top", "underside", "edge"],
  rail: ["face", "back", "upper", "lower", "left", "right"],
  "round-leg": ["side", "top", "foot"],
  "square-leg": ["side", "top", "foot"],
  "turned-leg": ["side", "top", "foot"],
  moulding: ["face"],
  carcase: [
    "sides",
    "top",
    "bottom",
    "back",
    "front",
    "front edges",
    "drawer fronts",
    "inside sides",
    "inside top",
    "inside bottom",
    "inside back",
    "inside front",
    "shelves",
  ],
  free: ["face"],
} as const satisfies Record<PartKind, readonly string[]>;

/** Which way the fibres run in a panel: along its length or its width; `none` for veneered or sheet stuff without end grain. */
export const grainWays = ["length", "width", "none"] as const;

interface Box {
  readonly length: Metre;
  readonly width: Metre;
  readonly thickness: Metre;
}

/** One part, in metres. Of a leg that does not taper, foot and top are the same. */
export type AreaPart =
  | ({ readonly part: "panel"; readonly grain: (typeof grainWays)[number] } & Box)
  | { readonly part: "round-panel"; readonly diameter: Metre; readonly thickness: Metre }
  | ({ readonly part: "rail" } & Box)
  | {
      readonly part: "round-leg" | "square-leg";
      readonly length: Metre;
      /** Diameter, or the side of the square. */
      readonly top: Metre;
      readonly foot: Metre;
    }
  | { readonly part: "turned-leg"; readonly profile: readonly Station[] }
  | { readonly part: "moulding"; readonly length: Metre; readonly girth: Metre | readonly ProfilePoint[] }
  | {
      readonly part: "carcase";
      readonly height: Metre;
      readonly width: Metre;
      readonly depth: Metre;
      /** Of every board, the back too. */
      readonly thickness: Metre;
      readonly shelves: number;
      readonly drawers: number;
      readonly drawerHeight: Metre;
    }
  | { readonly part: "free"; readonly areaM2: number };

export type PartOf<K extends PartKind> = Extract<AreaPart, { readonly part: K }>;
