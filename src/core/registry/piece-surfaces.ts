import { z } from "zod";
import { DomainError } from "../domain-error.ts";
import { benchTime } from "../pieces/bench-time.ts";
import type { PieceToPlan } from "../pieces/piece-to-plan.ts";

/** The sides and parts of a piece, as every door takes them. */
export const surfacesInput = {
  /** Its sides and parts in the order in which they are worked, where it is not worked all at once. */
  surfaces: z
    .array(
      z.strictObject({
        name: z.string().max(60),
        share: z.number().describe("of the area; all together are 1"),
        turned: z
          .boolean()
          .optional()
          .describe("worked when the one before it is dry enough to be lain on: underside, then top"),
      }),
    )
    .optional(),
  turnMinutes: z
    .number()
    .optional()
    .describe("from a coat's end until the piece is turned onto it; its least wait unless told"),
  hands: z.int().optional().describe("people who work at once, each on one surface; one unless told"),
  dryingPlaces: z
    .int()
    .optional()
    .describe("things that can lie drying at once, one that is turned counted once; any number unless told"),
  /** The same surface by surface, in place of `begun`; those not named have no coat. */
  begunOn: z.array(z.strictObject({ surface: z.string(), coats: z.int(), at: z.string() })).optional(),
};

type SurfacesGiven = z.output<z.ZodObject<typeof surfacesInput>>;
type BegunGiven = Pick<SurfacesGiven, "begunOn"> & {
  readonly begun?: { readonly coats: number; readonly at: string } | undefined;
};

/** What is told, and not what is not. */
function toldOf<T extends object>(told: T): { [K in keyof T]?: Exclude<T[K], undefined> } {
  return Object.fromEntries(Object.entries(told).filter(([, value]) => value !== undefined)) as {
    [K in keyof T]?: Exclude<T[K], undefined>;
  };
}

/** What is on already, of the whole piece or by surface. */
export function begunOf({ begun, begunOn }: BegunGiven): Pick<PieceToPlan, "begun" | "begunOn"> {
  if (begun !== undefined && begunOn !== undefined)
    throw new DomainError({
      code: "contradiction",
      field: "begunOn",
      value: begunOn,
      because: "What is on is told of the whole piece or surface by surface, not both.",
    });
  return {
    ...(begun && { begun: { coats: begun.coats, ...benchTime(begun.at, "begun.at") } }),
    ...(begunOn && {
      begunOn: begunOn.map(({ surface, coats, at: finished }, i) => ({
        surface,
        coats,
        ...benchTime(finished, `begunOn[${i}].at`),
      })),
    }),
  };
}

/** The surfaces and who and what there is for them. */
export const surfacesOf = ({ surfaces, turnMinutes, hands, dryingPlaces }: SurfacesGiven) => ({
  ...(surfaces && { surfaces: surfaces.map(({ turned = false, ...surface }) => ({ ...surface, turned })) }),
  ...toldOf({ turnMinutes, hands, dryingPlaces }),
});
