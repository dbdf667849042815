import { surfacesOfCarcase } from "./carcase.ts";
import { areaOfCircle, lateralAreaOfFrustum, lateralAreaOfSquareLeg } from "./frustum.ts";
import { girthOfProfile } from "./girth.ts";
import { type AreaPart, type PartKind, type PartOf, surfaceNames } from "./part.ts";
import { areaOfRevolution, type Station } from "./revolution.ts";
import type { Grain, Surface } from "./surface.ts";

/** Two faces, two long edges and two ends. */
function surfacesOfBox(box: PartOf<"panel"> | PartOf<"rail">): readonly Surface[] {
  const { length, width, thickness } = box;
  const along = box.part === "rail" ? "length" : box.grain;
  const areas = [length * width, length * thickness, width * thickness] as const;
  const grains: readonly Grain[] = [
    "side",
    along === "width" ? "end" : "side",
    along === "length" ? "end" : "side",
  ];
  return surfaceNames[box.part].map((surface, i) => {
    const pair = Math.floor(i / 2);
    return { surface, areaM2: areas[pair] as number, grain: grains[pair] as Grain }; // three pairs of names
  });
}

/** Its edge is cut across the fibres for most of its way round. */
function surfacesOfRound({ diameter, thickness }: PartOf<"round-panel">): readonly Surface[] {
  const circle = areaOfCircle(diameter);
  return [
    { surface: "top", areaM2: circle, grain: "side" },
    { surface: "underside", areaM2: circle, grain: "side" },
    { surface: "edge", areaM2: lateralAreaOfFrustum(diameter, diameter, thickness), grain: "end" },
  ];
}

const leg = (side: number, top: number, foot: number): readonly Surface[] => [
  { surface: "side", areaM2: side, grain: "side" },
  { surface: "top", areaM2: top, grain: "end" },
  { surface: "foot", areaM2: foot, grain: "end" },
];

function surfacesOfTurned({ profile }: PartOf<"turned-leg">): readonly Surface[] {
  const side = areaOfRevolution(profile);
  const [top, foot] = [profile[0] as Station, profile.at(-1) as Station]; // two at least: the side was worked out
  return leg(side, areaOfCircle(top.diameter), areaOfCircle(foot.diameter));
}

const face = (areaM2: number): readonly Surface[] => [{ surface: "face", areaM2, grain: "side" }];

/**
 * Every surface of one part, finished or not, under the names of `surfaceNames`. The ends of boards and legs are end
 * grain; the side of a turned leg is taken as side grain, its beads and shoulders too.
 *
 * @param part  sizes [m], above 0
 * @returns     surfaces [m²], in the order of `surfaceNames`
 *
 * Valid:    solid boards, and legs that are turned along their fibres
 * Accuracy: as its shape
 * Source:   rectangles, circles, frusta; a moulding is its girth times its length (Pappus: of a ring, the length that
 *           the middle of the girth goes round)
 */
export function surfacesOf(part: AreaPart): readonly Surface[] {
  switch (part.part) {
    case "panel":
    case "rail":
      return surfacesOfBox(part);
    case "round-panel":
      return surfacesOfRound(part);
    case "round-leg":
      return leg(
        lateralAreaOfFrustum(part.top, part.foot, part.length),
        areaOfCircle(part.top),
        areaOfCircle(part.foot),
      );
    case "square-leg":
      return leg(lateralAreaOfSquareLeg(part.top, part.foot, part.length), part.top ** 2, part.foot ** 2);
    case "turned-leg":
      return surfacesOfTurned(part);
    case "moulding":
      return face(part.length * (typeof part.girth === "number" ? part.girth : girthOfProfile(part.girth)));
    case "carcase":
      return surfacesOfCarcase(part);
    case "free":
      return face(part.areaM2);
  }
}

interface UsualFor {
  readonly part: PartKind;
  readonly drawers?: number;
}

const outside = ["sides", "top", "front edges"] as const;
const inside = ["inside sides", "inside top", "inside bottom", "inside back", "shelves"] as const;

/**
 * The surfaces that are usually finished, where the person does not say: from memory. Both faces and all edges of a
 * panel; of a rail not the ends, which are in a joint; of a leg not the top, which is under something; a case with
 * drawers outside alone, one without inside too.
 *
 * @param part  its kind, and the drawers of a carcase
 * @returns     names of its surfaces
 */
export function usuallyFinished(part: UsualFor): readonly string[] {
  switch (part.part) {
    case "rail":
      return surfaceNames.rail.slice(0, 4);
    case "round-leg":
    case "square-leg":
    case "turned-leg":
      return ["side", "foot"];
    case "carcase":
      return (part.drawers ?? 0) > 0 ? [...outside, "drawer fronts"] : [...outside, ...inside];
    default:
      return surfaceNames[part.part];
  }
}
