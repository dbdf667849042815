import { z } from "zod";
import { DomainError } from "../domain-error.ts";
import { dryFromMass, dryFromWet, filmAfterEachCoat, volumeSolids } from "../film/film.ts";
import { equalCoats, readyToRub } from "../film/rubbing-out.ts";
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
/** Of the first coats on bare wood, from memory; film to rub out, to be left and taken off: 3, 1 and half a mil, common practice. */
const usuallySinks = [0.5, 0.2, 0.05];
const usualRubbing = { neededUm: 76, leastUm: 25, removesUm: 12 };

const share = z.number().min(0).max(1);
const um = z.number().min(0).max(5000);
const rubOut = z.strictObject({
  neededUm: um.default(usualRubbing.neededUm).describe("to begin with, µm"),
  leastUm: um.default(usualRubbing.leastUm).describe("to be left, µm"),
  removesUm: um.default(usualRubbing.removesUm).describe("that it takes off, µm"),
});

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

type Other = { readonly cutLbPerGal: number; readonly wetUm: number; readonly transfer: number };

/** So many coats of another kind make the same film. */
function equivalentsOf(film: Metre, asked: readonly Other[] | undefined) {
  const others =
    asked ?? usualCuts.map((c) => ({ cutLbPerGal: c, wetUm: usualWetUm, transfer: 1 }) satisfies Other);
  const whole = { wet: film, solids: 1, transfer: 1 };
  return others.map((other) => ({
    ...other,
    coats: equalCoats(1, whole, {
      wet: metre(other.wetUm / 1e6),
      solids: volumeSolids(cutFromPoundsPerUsGallon(other.cutLbPerGal)),
      transfer: other.transfer,
    }),
  }));
}

function rubbingOf(film: Metre, perCoat: Metre, asked: z.output<typeof rubOut>) {
  const found = readyToRub(film, 0, perCoat, {
    needed: metre(asked.neededUm / 1e6),
    least: metre(asked.leastUm / 1e6),
    removes: metre(asked.removesUm / 1e6),
  });
  return {
    toGoUm: found.toGo * 1e6,
    coatsToGo: found.coatsToGo,
    leavesUm: found.leaves * 1e6,
    risk: found.risk,
  };
}

export const filmBuild = defineCalculation({
  name: "film-build",
  purpose: "Dry film from coats of a cut, sanding counted, and how many coats of another cut it equals",
  input: z.strictObject({
    coats: z.array(coat).min(1).max(500),
    sanded: z
      .array(z.strictObject({ afterCoat: z.number(), removedUm: z.number().min(0).max(5000) }))
      .optional(),
    /** Coats to compare with; the usual working cuts at 100 µm wet unless told. */
    equivalents: z.array(z.strictObject({ cutLbPerGal, wetUm, transfer: coat.shape.transfer })).optional(),
    bareWood: z.boolean().default(false).describe("whether the first coats sink in"),
    sinks: z
      .array(share)
      .max(20)
      .default(usuallySinks)
      .describe("on bare wood: which share of the first, the second … coat sinks in"),
    rubOut: rubOut.default(usualRubbing).describe("what rubbing out asks for and takes off"),
  }),
  output: z.object({
    coats: z.array(
      z.object({
        dryUm: z.number().describe("that stands above the wood, µm"),
        sunkUm: z.number().describe("that sinks into it, µm"),
        wetUm: z.number(),
        gramsPerM2: z.number(),
        volumeSolids: z.number(),
        /** The film that is there after this coat and its sanding. */
        filmUm: z.number(),
      }),
    ),
    dryUm: z.number(),
    equivalentCoats: z.array(
      z.object({ cutLbPerGal: z.number(), wetUm: z.number(), transfer: z.number(), coats: z.number() }),
    ),
    rubbingOut: z.object({
      toGoUm: z.number().describe("still missing, µm"),
      coatsToGo: z.number().nullable().describe("more coats of the last kind; null where they add nothing"),
      leavesUm: z.number().describe("if it were rubbed out now, µm"),
      risk: z.enum(["holds", "may go through", "goes through"]),
    }),
    flags: z.array(flag),
  }),
  run: (given) => {
    const coats = given.coats.map((c, i) => {
      const film = filmOf(c, i);
      const sunk = given.bareWood ? film.dry * (given.sinks[i] ?? 0) : 0;
      return { ...film, dry: metre(film.dry - sunk), sunk };
    });
    const removals = (given.sanded ?? []).map(({ afterCoat, removedUm }) => ({
      afterCoat,
      removed: metre(removedUm / 1e6),
    }));
    const films = filmAfterEachCoat(
      coats.map((c) => c.dry),
      removals,
    );
    const film = films.at(-1) ?? metre(0);
    return {
      coats: coats.map(({ dry, sunk, ...rest }, i) => ({
        dryUm: dry * 1e6,
        sunkUm: sunk * 1e6,
        ...rest,
        filmUm: (films[i] ?? 0) * 1e6,
      })),
      dryUm: film * 1e6,
      equivalentCoats: equivalentsOf(film, given.equivalents),
      rubbingOut: rubbingOf(film, coats.at(-1)?.dry ?? metre(0), given.rubOut),
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
