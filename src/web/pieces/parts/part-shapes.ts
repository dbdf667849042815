import type { AreaPartInput } from "../../../core/registry/area-input.ts";
import {
  alone,
  type Block,
  disc,
  joined,
  lying,
  type Point,
  rect,
  silhouette,
  strip,
} from "./flat-shapes.ts";

type Given<K extends AreaPartInput["part"]> = Extract<AreaPartInput, { part: K }>;

/** One face with its edges folded out flat, and the other face beside it. */
function box(names: readonly string[], length: number, width: number, thickness: number): Block[] {
  const [face = "", other = "", front = "", back = "", left = "", right = ""] = names;
  const t = thickness;
  return [
    {
      width: length + 2 * t,
      height: width + 2 * t,
      shapes: [
        rect(face, t, t, length, width),
        rect(back, t, 0, length, t),
        rect(front, t, t + width, length, t),
        rect(left, 0, t, t, width),
        rect(right, t + length, t, t, width),
      ],
    },
    alone(other, length, width),
  ];
}

function leg(part: Given<"round-leg" | "square-leg">): Block[] {
  const [top, foot] = [part.topMm, part.footMm ?? part.topMm];
  const side = silhouette("side", [
    [0, top / 2],
    [part.lengthMm, foot / 2],
  ]);
  if (part.part === "round-leg") return [lying(side), ...disc("top", top), ...disc("foot", foot)];
  const ends = [
    ...(top > 0 ? [alone("top", top, top)] : []),
    ...(foot > 0 ? [alone("foot", foot, foot)] : []),
  ];
  return [lying(joined([side, side, side, side])), ...ends];
}

function turnedLeg({ profile }: Given<"turned-leg">): Block[] {
  const side = silhouette(
    "side",
    profile.map(({ atMm, diameterMm }): Point => [atMm, diameterMm / 2]),
  );
  return [
    lying(side),
    ...disc("top", profile[0]?.diameterMm ?? 0),
    ...disc("foot", profile.at(-1)?.diameterMm ?? 0),
  ];
}

/** Outside with its front between its sides, then inside; a front or a shelf that there is none of is not drawn. */
function carcase(part: Given<"carcase">): Block[] {
  const {
    heightMm: h,
    widthMm: w,
    depthMm: d,
    thicknessMm: t,
    shelves = 0,
    drawers = 0,
    finished = [],
  } = part;
  const [wide, high, deep] = [w - 2 * t, h - 2 * t, d - t];
  const drawer = part.drawerHeightMm ?? (drawers > 0 ? high / drawers : 0);
  const edges = [
    rect("front edges", 0, 0, t, h),
    rect("front edges", w - t, 0, t, h),
    rect("front edges", t, 0, wide, t),
    rect("front edges", t, h - t, wide, t),
  ];
  const fronts = Array.from({ length: drawers }, (_, i) =>
    rect("drawer fronts", t, t + i * drawer, wide, drawer),
  );
  const side = alone("sides", d, h);
  const inner = alone("inside sides", deep, high);
  const closed = (surface: "front" | "inside front", width: number, height: number) =>
    finished.includes(surface) ? [alone(surface, width, height)] : [];
  return [
    joined([side, { width: w, height: h, shapes: [...edges, ...fronts] }, side]),
    ...closed("front", w, h),
    alone("top", w, d),
    alone("bottom", w, d),
    alone("back", w, h),
    joined([inner, alone("inside back", wide, high), inner]),
    ...closed("inside front", wide, high),
    alone("inside top", wide, deep),
    alone("inside bottom", wide, deep),
    ...Array.from({ length: shelves }, () => alone("shelves", wide, 2 * deep + t)),
  ];
}

/**
 * A part in flat shapes, true to size; round ones as seen from the side and from the ends. `areaM2` is that of its
 * first surface: a moulding is drawn as wide as its girth, and a free area as a square.
 */
export function shapesOf(part: AreaPartInput, areaM2: number): readonly Block[] {
  switch (part.part) {
    case "panel":
      return box(
        ["top", "underside", "front", "back", "left", "right"],
        part.lengthMm,
        part.widthMm,
        part.thicknessMm,
      );
    case "rail":
      return box(
        ["face", "back", "lower", "upper", "left", "right"],
        part.lengthMm,
        part.widthMm,
        part.thicknessMm,
      );
    case "round-panel":
      return [
        ...disc("top", part.diameterMm),
        ...disc("underside", part.diameterMm),
        strip("edge", Math.PI * part.diameterMm, part.thicknessMm),
      ];
    case "round-leg":
    case "square-leg":
      return leg(part);
    case "turned-leg":
      return turnedLeg(part);
    case "moulding":
      return [strip("face", part.lengthMm, (areaM2 * 1e6) / part.lengthMm)];
    case "carcase":
      return carcase(part);
    case "free":
      return [alone("face", Math.sqrt(areaM2) * 1000, Math.sqrt(areaM2) * 1000)];
  }
}
