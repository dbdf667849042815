import { z } from "zod";
import { partKinds } from "../area/part.ts";
import { surfacesOf, usuallyFinished } from "../area/surfaces.ts";
import { areaOfAll, areaOfPart } from "../area/total.ts";
import { DomainError } from "../domain-error.ts";
import { type AreaPartGiven, areaInput, partFromInput } from "./area-input.ts";
import { defineCalculation } from "./calculation.ts";
import { type Flag, flag } from "./flag.ts";

const output = z.object({
  areaM2: z.number().describe("what is finished, of all parts, m²"),
  endGrainM2: z.number().describe("of which end grain, m²"),
  equivalentM2: z.number().describe("sealed side grain that would take as much in the first coat, m²"),
  parts: z.array(
    z.object({
      part: z.enum(partKinds),
      name: z.string().optional(),
      count: z.number(),
      areaM2: z.number().describe("of all of them, m²"),
      surfaces: z
        .array(
          z.object({
            surface: z.string(),
            areaM2: z.number(),
            grain: z.enum(["side", "end"]),
            finished: z.boolean(),
          }),
        )
        .describe("of one of them, m²"),
    }),
  ),
  flags: z.array(flag),
});

/** The name of a field inside a part, as the one who gave it knows it: `thickness` is `parts[2].thicknessMm`. */
function named(error: DomainError, given: AreaPartGiven, i: number): DomainError {
  const { field, value } = error.detail;
  const inMm = `${field}Mm`;
  const at = /^profile\[(\d+)\]\.at$/.exec(field);
  const known = inMm in given ? inMm : at === null ? field : `profile[${at[1]}].atMm`;
  const wasLength = known !== field && typeof value === "number";
  return new DomainError({
    ...error.detail,
    field: `parts[${i}].${known}`,
    value: wasLength ? Number((value * 1000).toPrecision(9)) : value,
  });
}

function workedOut(given: AreaPartGiven, i: number) {
  try {
    const part = partFromInput(given);
    const finished: readonly string[] = given.finished ?? usuallyFinished(part);
    return { given, finished, surfaces: surfacesOf(part) };
  } catch (error) {
    if (error instanceof DomainError) throw named(error, given, i);
    throw error;
  }
}

/** What a finisher would be asked about: nothing counted, or one face of a panel alone. */
function flagsOf({ given, finished }: ReturnType<typeof workedOut>, i: number): Flag[] {
  const field = `parts[${i}].finished`;
  if (finished.length === 0)
    return [{ code: "nothing-finished", field, message: "No surface of it is counted." }];
  const flat = given.part === "panel" || given.part === "round-panel";
  const faces = ["top", "underside"].filter((face) => finished.includes(face));
  if (!flat || faces.length !== 1) return [];
  const message =
    "One face alone is counted. Both are usually finished, so that they take up damp alike and it stays flat (common practice).";
  return [{ code: "one-face", field, message }];
}

export const area = defineCalculation({
  name: "area",
  purpose: "Surface to be finished, worked out from the parts of a piece, and how much of it is end grain",
  input: areaInput,
  output,
  run: ({ parts, ...takes }) => {
    const worked = parts.map(workedOut);
    const totals = worked.map(({ given, ...part }) =>
      areaOfPart({ ...part, count: given.count, bare: given.bare }, takes),
    );
    return {
      ...areaOfAll(totals),
      parts: worked.map(({ given, surfaces, finished }, i) => ({
        part: given.part,
        ...(given.name === undefined ? {} : { name: given.name }),
        count: given.count,
        areaM2: totals[i]?.areaM2 ?? 0,
        surfaces: surfaces.map((s) => ({ ...s, finished: finished.includes(s.surface) })),
      })),
      flags: worked.flatMap(flagsOf),
    };
  },
  sources: [
    "Archimedes, On the Sphere and Cylinder I, propositions 13, 14 and 16: cylinder, cone, frustum",
    "Pappus, Collection VII: a moulding's girth times the way of its middle",
    "That end grain and bare wood take more: common practice; twice as much for end grain: from memory. Editable",
  ],
  example: {
    input: {
      parts: [
        { part: "panel", name: "top", lengthMm: 1800, widthMm: 900, thicknessMm: 30 },
        { part: "round-leg", lengthMm: 700, topMm: 60, footMm: 40, count: 4, finished: ["side"] },
      ],
    },
    output: {
      areaM2: 3.8419,
      endGrainM2: 0.054,
      equivalentM2: 3.8959,
      parts: [{ areaM2: 3.402 }, { areaM2: 0.43987 }],
    },
  },
});
