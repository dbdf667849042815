import { z } from "zod";
import { type AreaPart, grainWays, type PartKind, surfaceNames } from "../area/part.ts";
import { usuallyTakesMore } from "../area/total.ts";
import { DomainError } from "../domain-error.ts";
import { type Metre, metre } from "../units.ts";

/** From a knob's shank to a church bench [mm]. */
const mm = z.number().min(0.1).max(20_000);
const diameterMm = z.number().min(0).max(20_000);
const counted = z.int().min(0).max(200);

const ofKind = <K extends PartKind, S extends z.ZodRawShape>(part: K, sizes: S) =>
  z.strictObject({
    part: z.literal(part),
    ...sizes,
    /** How many there are. */
    count: z.int().min(1).max(1000).default(1),
    name: z.string().max(200).optional(),
    finished: z
      .array(z.enum(surfaceNames[part]))
      .optional()
      .describe("the surfaces that are finished; the usual ones unless told"),
    bare: z.boolean().default(false).describe("bare wood, whose first coat takes more"),
  });

const box = { lengthMm: mm, widthMm: mm, thicknessMm: mm };
const tapered = {
  lengthMm: mm,
  topMm: diameterMm.describe("diameter, or side of the square, at the top"),
  footMm: diameterMm.optional().describe("at the foot; as at the top unless told"),
};

export const areaPart = z.discriminatedUnion("part", [
  ofKind("panel", {
    ...box,
    grain: z.enum(grainWays).default("length").describe("which way the fibres run; none for veneered stuff"),
  }),
  ofKind("round-panel", { diameterMm: mm, thicknessMm: mm }),
  ofKind("rail", box),
  ofKind("round-leg", tapered),
  ofKind("square-leg", tapered),
  ofKind("turned-leg", {
    profile: z
      .array(z.strictObject({ atMm: diameterMm, diameterMm }))
      .max(500)
      .describe("diameters measured along it, from one end to the other"),
  }),
  ofKind("moulding", {
    lengthMm: z.number().min(0.1).max(1_000_000),
    girthMm: mm.optional().describe("measured with a string over the profile"),
    profile: z
      .array(z.strictObject({ acrossMm: diameterMm, upMm: diameterMm }))
      .max(500)
      .optional()
      .describe("points of the section, in place of girthMm"),
  }),
  ofKind("carcase", {
    heightMm: mm,
    widthMm: mm,
    depthMm: mm,
    thicknessMm: mm,
    shelves: counted.default(0),
    drawers: counted.default(0),
    drawerHeightMm: mm.optional().describe("of one drawer front; an equal share of the inside unless told"),
  }),
  ofKind("free", { areaM2: z.number().min(1e-6).max(200) }),
]);
export type AreaPartGiven = z.output<typeof areaPart>;
export type AreaPartInput = z.input<typeof areaPart>;

const times = (most: number) => z.number().min(1).max(most);

export const areaInput = z.strictObject({
  parts: z.array(areaPart).min(1).max(500),
  endGrainTimes: times(10)
    .default(usuallyTakesMore.endGrainTimes)
    .describe("how many times as much liquid end grain takes: from memory"),
  bareWoodTimes: times(5)
    .default(usuallyTakesMore.bareWoodTimes)
    .describe("how many times as much the first coat of bare wood takes: common practice"),
});

const m = (given: number): Metre => metre(given / 1000);

function girthOf(given: Extract<AreaPartGiven, { part: "moulding" }>) {
  const { girthMm, profile } = given;
  if (girthMm !== undefined && profile !== undefined)
    throw new DomainError({
      code: "contradiction",
      field: "girthMm",
      value: girthMm,
      because: "The profile says the girth already; give one of them.",
    });
  if (girthMm !== undefined) return m(girthMm);
  if (profile === undefined) throw new DomainError({ code: "missing", field: "girthMm", value: undefined });
  return profile.map(({ acrossMm, upMm }) => ({ across: m(acrossMm), up: m(upMm) }));
}

/** A part as it was given, in metres. */
export function partFromInput(given: AreaPartGiven): AreaPart {
  switch (given.part) {
    case "panel":
    case "rail": {
      const box = { length: m(given.lengthMm), width: m(given.widthMm), thickness: m(given.thicknessMm) };
      return given.part === "rail" ? { part: "rail", ...box } : { part: "panel", grain: given.grain, ...box };
    }
    case "round-panel":
      return { part: "round-panel", diameter: m(given.diameterMm), thickness: m(given.thicknessMm) };
    case "round-leg":
    case "square-leg":
      return {
        part: given.part,
        length: m(given.lengthMm),
        top: m(given.topMm),
        foot: m(given.footMm ?? given.topMm),
      };
    case "turned-leg": {
      const profile = given.profile.map((s) => ({ at: m(s.atMm), diameter: m(s.diameterMm) }));
      return { part: "turned-leg", profile };
    }
    case "moulding":
      return { part: "moulding", length: m(given.lengthMm), girth: girthOf(given) };
    case "carcase": {
      const { heightMm, thicknessMm, shelves, drawers } = given;
      const share = Math.max(0, heightMm - 2 * thicknessMm) / Math.max(1, drawers);
      return {
        part: "carcase",
        height: m(heightMm),
        width: m(given.widthMm),
        depth: m(given.depthMm),
        thickness: m(thicknessMm),
        shelves,
        drawers,
        drawerHeight: m(given.drawerHeightMm ?? share),
      };
    }
    case "free":
      return { part: "free", areaM2: given.areaM2 };
  }
}
