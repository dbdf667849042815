import type { PartKind, surfaceNames } from "../../../core/area/part.ts";
import type { typicalPieces } from "../../../core/registry/typical-pieces.ts";
import { counted } from "../counted.ts";

type Surfaces = { readonly [K in PartKind]: Record<(typeof surfaceNames)[K][number], string> };
type Typical = (typeof typicalPieces)[number];

const kinds: Record<PartKind, string> = {
  panel: "Panel or top",
  "round-panel": "Round top",
  rail: "Rail or board",
  "round-leg": "Round leg",
  "square-leg": "Square leg",
  "turned-leg": "Turned leg",
  moulding: "Moulding",
  carcase: "Carcase or box",
  free: "An area you know",
};

const ofLeg = { side: "Side all round", top: "Top end", foot: "Foot" };
const surfaces: Surfaces = {
  panel: {
    top: "Top",
    underside: "Underside",
    front: "Front edge",
    back: "Back edge",
    left: "Left end",
    right: "Right end",
  },
  "round-panel": { top: "Top", underside: "Underside", edge: "Edge" },
  rail: {
    face: "Face",
    back: "Back",
    upper: "Upper edge",
    lower: "Lower edge",
    left: "Left end",
    right: "Right end",
  },
  "round-leg": ofLeg,
  "square-leg": ofLeg,
  "turned-leg": ofLeg,
  moulding: { face: "Face" },
  carcase: {
    sides: "Sides",
    top: "Top",
    bottom: "Bottom",
    back: "Back",
    front: "Front or lid",
    "front edges": "Front edges",
    "drawer fronts": "Drawer fronts",
    "inside sides": "Inside, sides",
    "inside top": "Inside, top",
    "inside bottom": "Inside, bottom",
    "inside back": "Inside, back",
    "inside front": "Inside, front or lid",
    shelves: "Shelves",
  },
  free: { face: "Face" },
};

const typical: Record<Typical["piece"], string> = {
  "dining top": "Dining table top",
  "side table": "Side table",
  "dining chair": "Dining chair",
  stool: "Turned stool",
  bookcase: "Bookcase",
  "chest of drawers": "Chest of drawers",
  box: "Box, inside and out",
  "panelled door": "Panelled door",
  "acoustic guitar": "Large acoustic guitar",
  "classical guitar": "Classical guitar",
  ukulele: "Ukulele",
  violin: "Violin",
};
const names: Record<Typical["parts"][number]["name"], string> = {
  top: "Top",
  legs: "Legs",
  rails: "Rails",
  seat: "Seat",
  "back legs": "Back legs",
  "front legs": "Front legs",
  stretchers: "Stretchers",
  "top rail": "Top rail",
  spindles: "Spindles",
  case: "Case",
  box: "Box",
  door: "Door",
  mouldings: "Mouldings round the panels",
  back: "Back",
  sides: "Sides",
  neck: "Neck and head",
  outside: "Outside",
};

export const parts = {
  open: "Work out the area from its parts",
  counted: "What was counted",
  begin: "Begin from something usual",
  beginEmpty: "Choose a piece",
  beginHint: "Its sizes are from memory: put your own in.",
  add: "Add a part",
  kinds,
  surfaces,
  typical,
  names,
  change: (name: string) => `Change ${name}`,
  takeOut: (name: string) => `Take out ${name}`,
  done: "Done with this part",
  tookOut: (name: string) => `${name} taken out.`,
  tookAllOut: "All parts taken out.",
  beginAgain: "Take all out",
  name: "Name of the part",
  count: "How many",
  countWrong: "Whole numbers from 1 to 1000 would do.",
  shelves: "Shelves inside",
  drawers: "Drawers",
  someWrong: "Whole numbers from 0 to 200 would do.",
  sizes: {
    length: "Length",
    width: "Width",
    thickness: "Thickness",
    diameter: "Diameter",
    top: "Across the top",
    foot: "Across the foot",
    girth: "Girth, by a string laid over it",
    height: "Height",
    depth: "Depth",
    drawerHeight: "Height of a drawer front",
    area: "Area of one",
  },
  sizeHints: {
    foot: "Nothing where it does not taper, 0 where it runs to a point",
    girth: "Or points of its section, below",
    drawerHeight: "Nothing where they share the inside alike",
  } as Partial<Record<string, string>>,
  inUnit: { mm: "A number alone is millimetres", in: "A number alone is inches" },
  grain: "The grain runs",
  grainWays: { length: "Along it", width: "Across it", none: "Veneered" },
  profileTurned: "Diameters down the leg",
  profileTurnedHint:
    "A line for each place: how far down, a colon, the diameter there. A shoulder is two lines.",
  profileMoulding: "Points of the section",
  profileMouldingHint: "Where there is no girth. A line for each point: across, a colon, up.",
  profileWrong: (line: string) => `“${line}” cannot be read. A line as 120: 34 would do.`,
  finished: "What is finished and counted",
  problems: {
    thicknessMm: "Boards as thick as this leave no inside.",
    drawerHeightMm: "The drawer fronts are higher together than the inside.",
    girthMm: "A girth would do, or points of the section; not both.",
    profile: "Two places or more would do, from one end to the other and never back.",
  } as Partial<Record<string, string>>,
  doesNotFit: "This part does not fit together yet.",
  notYet: "not complete yet",
  notCounted: (n: number) =>
    n === 1
      ? "One part is not complete yet, and is not counted."
      : `${sentence(n)} parts are not complete yet, and are not counted.`,
  flags: {
    "one-face":
      "One face alone is counted. Both are usually finished, so that they take up damp alike and it stays flat (common practice).",
    "nothing-finished": "No surface of it is counted.",
  } as Partial<Record<string, string>>,
  summary: (what: string, counted: string) =>
    `${what}. ${counted === "" ? "Nothing of it is counted" : `Counted: ${counted}`}.`,
  heading: (count: number, name: string) => (count === 1 ? name : `${count} × ${name}`),
  partArea: (heading: string, area: string) => `${heading}: ${area}`,
  inAll: (area: string) => `${area} in all`,
  endGrain: (of: string, asMuch: string) =>
    `${of} of it is end grain: the first coat takes as much as ${asMuch} would without.`,
  noEndGrain: "None of it is end grain.",
  times: "End grain takes so many times as much",
  timesHint: "Of the first coat. Two is from memory; your own figure is better.",
  timesWrong: "1 to 10 would do.",
  take: (area: string) => `Take ${area} as the area`,
  drawingSays: (all: string) => `What is counted, drawn to scale. ${all}`,
  partSays: (heading: string, area: string, does: string, doesNot: string) =>
    `${heading}, ${area}: counted ${does === "" ? "nothing" : does}${doesNot === "" ? "" : `; not counted ${doesNot}`}.`,
  drawingNote:
    "Filled is counted, a dashed outline is not. Faces are folded out flat; what is round is seen from the side and the ends; of several alike, one is drawn.",
};

const sentence = (n: number): string => {
  const word = counted(n);
  return word.charAt(0).toUpperCase() + word.slice(1);
};
