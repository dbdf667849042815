import { z } from "zod";
import { DomainError } from "../domain-error.ts";
import { dryFromMass, dryFromWet, filmAfterEachCoat, volumeSolids } from "../film/film.ts";
import { densityOfSolvent } from "../solution/density.ts";
import { usualPartialDensity } from "../solution/resin.ts";
import { strengthAt20C } from "../solution/strength.ts";
import { cutFromPoundsPerUsGallon, kilogramPerCubicMetre, type Metre, metre } from "../units.ts";
import { cutLbPerGal } from "./amount.ts";
import { defineCalculation } from "./calculation.ts";
import { type Flag, flag } from "./flag.ts";
import { solventFromInput } from "./solution-input.ts";
import { type SolventInput, solvent } from "./solvent.ts";

const wetUm = z.number().min(0.1).max(5000);

const coat = z.strictObject({
  cutLbPerGal,
  wetUm: wetUm.optional(),
  /** Liquid spent on the area. */
  gramsPerM2: z.number().min(0.01).max(5000).optional(),
  /** Share that stays on the work. */
  transfer: z.number().min(0.01).max(1).default(1),
  solvent: solvent.optional(),
  partialDensityKgM3: z.number().min(500).max(3000).optional(),
});
type Coat = z.output<typeof coat>;

const ethanol95: SolventInput = { alcohol: "ethanol", volumeFraction: 0.95 };
/** Working cuts to compare with, from a wash coat to a full body. */
const usualCuts = [0.5, 1, 1.5, 2, 3];
const usualWetUm = 100;

interface CoatFilm {
  readonly dry: Metre;
  readonly wetUm: number;
  readonly gramsPerM2: number;
  readonly volumeSolids: number;
}

/** One coat: from its wet thickness or its mass to both, and to what stays. */
function filmOf(given: Coat, i: number): CoatFilm {
  if (given.wetUm !== undefined && given.gramsPerM2 !== undefined)
    throw new DomainError({
      code: "contradiction",
      field: `coats[${i}].gramsPerM2`,
      value: given.gramsPerM2,
      because: "wetUm says the amount already; give one of them.",
    });
  const cut = cutFromPoundsPerUsGallon(given.cutLbPerGal);
  const partialDensity = kilogramPerCubicMetre(given.partialDensityKgM3 ?? usualPartialDensity);
  const solids = volumeSolids(cut, partialDensity);
  const composition = solventFromInput(given.solvent ?? ethanol95, `coats[${i}].solvent`);
  const solventDensity = densityOfSolvent(composition, strengthAt20C).value;
  const liquidDensity = (1 - solids) * (solventDensity + cut);
  if (given.wetUm !== undefined) {
    const wet = metre(given.wetUm / 1e6);
    return {
      dry: dryFromWet(wet, solids, given.transfer),
      wetUm: given.wetUm,
      gramsPerM2: wet * liquidDensity * 1e3,
      volumeSolids: solids,
    };
  }
  if (given.gramsPerM2 === undefined)
    throw new DomainError({ code: "missing", field: `coats[${i}].wetUm`, value: undefined });
  const resin = cut / (cut + solventDensity);
  return {
    dry: dryFromMass(given.gramsPerM2 / 1e3, resin, partialDensity, given.transfer),
    wetUm: (given.gramsPerM2 / 1e3 / liquidDensity) * 1e6,
    gramsPerM2: given.gramsPerM2,
    volumeSolids: solids,
  };
}

const assumedSolvent = (coats: readonly Coat[]): Flag[] =>
  coats.flatMap((c, i) =>
    c.gramsPerM2 !== undefined && c.solvent === undefined
      ? [
          {
            code: "assumed-solvent",
            field: `coats[${i}].solvent`,
            message: "No solvent was told: ethanol of 95 % by volume is assumed, to turn grams into a film.",
          },
        ]
      : [],
  );

export const filmBuild = defineCalculation({
  name: "film-build",
  purpose: "Dry film from coats of a cut, sanding counted, and how many coats of another cut it equals",
  input: z.strictObject({
    coats: z.array(coat).min(1).max(500),
    sanded: z
      .array(z.strictObject({ afterCoat: z.number(), removedUm: z.number().min(0).max(5000) }))
      .optional(),
    /** Coats to compare with; the usual working cuts at 100 µm wet unless told. */
    equivalents: z.array(z.strictObject({ cutLbPerGal, wetUm })).optional(),
  }),
  output: z.object({
    coats: z.array(
      z.object({
        dryUm: z.number(),
        wetUm: z.number(),
        gramsPerM2: z.number(),
        volumeSolids: z.number(),
        /** The film that is there after this coat and its sanding. */
        filmUm: z.number(),
      }),
    ),
    dryUm: z.number(),
    equivalentCoats: z.array(z.object({ cutLbPerGal: z.number(), wetUm: z.number(), coats: z.number() })),
    flags: z.array(flag),
  }),
  run: (given) => {
    const coats = given.coats.map(filmOf);
    const removals = (given.sanded ?? []).map(({ afterCoat, removedUm }) => ({
      afterCoat,
      removed: metre(removedUm / 1e6),
    }));
    const films = filmAfterEachCoat(
      coats.map((c) => c.dry),
      removals,
    );
    const dryUm = (films.at(-1) ?? 0) * 1e6;
    const others = given.equivalents ?? usualCuts.map((c) => ({ cutLbPerGal: c, wetUm: usualWetUm }));
    return {
      coats: coats.map(({ dry, ...rest }, i) => ({
        dryUm: dry * 1e6,
        ...rest,
        filmUm: (films[i] ?? 0) * 1e6,
      })),
      dryUm,
      equivalentCoats: others.map((o) => ({
        ...o,
        coats: dryUm / (o.wetUm * volumeSolids(cutFromPoundsPerUsGallon(o.cutLbPerGal))),
      })),
      flags: assumedSolvent(given.coats),
    };
  },
  sources: ["Volume solids by mass balance; dissolved resin 1205 kg/m³, and the film as dense as that"],
  example: {
    input: {
      coats: [
        { cutLbPerGal: 2, wetUm: 100 },
        { cutLbPerGal: 1, wetUm: 100 },
      ],
    },
    output: { coats: [{ dryUm: 16.59 }, { dryUm: 9.04 }], dryUm: 25.63 },
  },
});
