import { z } from "zod";
import { DomainError } from "../domain-error.ts";
import { randomFromSeed } from "../random.ts";
import { pouredTogether } from "../solution/composition.ts";
import { uncertaintyOfMix } from "../solution/cut-uncertainty.ts";
import { densityOfSolvent } from "../solution/density.ts";
import type { Instruments } from "../solution/instruments.ts";
import type { Measured, Measurement, SolventMeasuredBy } from "../solution/measured-mix.ts";
import { type Mixed, type MixGiven, mixFrom, type Recipe } from "../solution/mix.ts";
import { drawnCuts } from "../solution/mix-draws.ts";
import { massFractionOfResin, massOfSolution, volumeFractionOfResin } from "../solution/solution.ts";
import { solventSlopes } from "../solution/solvent-slopes.ts";
import {
  cubicMetreFromMillilitres,
  gramsFromKilogram,
  kilogram,
  kilogramFromGrams,
  millilitresFromCubicMetre,
} from "../units.ts";
import { amountG, amountMl } from "./amount.ts";
import { defineCalculation } from "./calculation.ts";
import { allCutNames, cutFromInput, cutInAllNames, cutNames, poundsPerUsGallon } from "./cut-names.ts";
import { flag, flagsAbout } from "./flag.ts";
import {
  instrumentsFromInput,
  resinsFromInput,
  type SolventPart,
  solventPartsFromInput,
  temperatureFromInput,
} from "./solution-input.ts";
import { instruments, resins, solvent } from "./solvent.ts";
import { sureness, surenessOf } from "./sureness.ts";

/** Room above the liquid, so that a jar can be shaken. Common practice. */
const usualHeadspace = 0.1;

const input = z.strictObject({
  resinG: amountG.optional(),
  ...cutNames,
  solventMl: amountMl.optional(),
  solventG: amountG.optional(),
  solutionMl: amountMl.optional(),
  vesselMl: amountMl.optional(),
  headspaceFraction: z.number().min(0).max(0.9).optional(),
  solvent,
  resins: resins.optional(),
  temperatureC: z.number().optional(),
  instruments: instruments.optional(),
  /** Draws the cut as well, beside the law of propagation: the same seed gives the same draws. */
  monteCarlo: z.strictObject({ draws: z.int().min(1000).max(1e6), seed: z.string().min(1) }).optional(),
});
type MixInput = z.output<typeof input>;

const output = z.object({
  resinG: z.number(),
  dryResinG: z.number(),
  solventMl: z.number(),
  solventG: z.number(),
  solutionMl: z.number(),
  solutionG: z.number(),
  ...allCutNames,
  /** Dry resin per volume of the finished liquid. */
  gramsPerLitreSolution: z.number(),
  lbPerGalSolution: z.number(),
  massFractionResin: z.number(),
  volumeFractionResin: z.number(),
  /** Of the liquid, the flakes' moisture included. */
  waterMassFraction: z.number(),
  pours: z.array(z.object({ massG: z.number(), volumeMl: z.number() })),
  weighings: z.array(z.object({ massG: z.number() })),
  vessel: z
    .object({ solutionFraction: z.number(), fits: z.boolean(), mostSolutionMl: z.number() })
    .nullable(),
  ...sureness,
  solventMeasuredBy: z.enum(["jug", "scale"]),
  /** The uncertainty if the solvent were weighed on the same scale. */
  cutStandardUncertaintyIfWeighed: z.number(),
  /** By Monte Carlo, where that was asked for: mean, standard deviation, and the interval that holds 95 %. */
  drawn: z
    .object({
      cutLbPerGal: z.number(),
      cutStandardUncertainty: z.number(),
      interval95: z.tuple([z.number(), z.number()]),
    })
    .nullable(),
  flags: z.array(flag),
});

/** Amounts that say the same thing: of each group one may be given. */
const groups = {
  resin: ["resinG"],
  cut: ["cutLbPerGal", "cutLbPerImperialGal", "gramsPerLitreSolvent"],
  solvent: ["solventMl", "solventG"],
  solution: ["solutionMl"],
} as const;
type Group = keyof typeof groups;
type AmountField = (typeof groups)[Group][number];

const whatWouldDo =
  "Two of resinG, a cut, solventMl or solventG, and solutionMl say the rest; vesselMl with one of them does too.";

const leastHeadspace = (given: MixInput): number => given.headspaceFraction ?? usualHeadspace;
const mostInVessel = (given: MixInput): number | undefined =>
  given.vesselMl === undefined ? undefined : given.vesselMl * (1 - leastHeadspace(given));

/** The fields that say amounts, one a group; a vessel stands for the solution when there is only one other. */
function amountsGiven(given: MixInput): readonly AmountField[] {
  const fields = (Object.keys(groups) as Group[]).flatMap((group) => {
    const [first, second] = (groups[group] as readonly AmountField[]).filter((f) => given[f] !== undefined);
    if (first !== undefined && second !== undefined)
      throw new DomainError({
        code: "contradiction",
        field: second,
        value: given[second],
        because: `${first} says it already; give one of them.`,
      });
    return first === undefined ? [] : [first];
  });
  if (given.headspaceFraction !== undefined && given.vesselMl === undefined)
    throw new DomainError({
      code: "contradiction",
      field: "headspaceFraction",
      value: given.headspaceFraction,
      because: "It belongs to vesselMl, which is not given.",
    });
  const enough = fields.length + (given.vesselMl === undefined ? 0 : 1) >= 2;
  if (!enough)
    throw new DomainError({
      code: "missing",
      field: fields[0] === "resinG" ? "cutLbPerGal" : "resinG",
      value: undefined,
      because: whatWouldDo,
    });
  return fields;
}

function givenFrom(given: MixInput, fields: readonly AmountField[], recipe: Recipe): MixGiven {
  const has = (...names: AmountField[]): boolean => names.some((name) => fields.includes(name));
  const density = densityOfSolvent(recipe.solvent, recipe.temperature).value;
  const cut = has(...groups.cut) ? cutFromInput(given) : undefined;
  const poured =
    given.solventG === undefined
      ? kilogram(cubicMetreFromMillilitres(given.solventMl ?? 0) * density)
      : kilogramFromGrams(given.solventG);
  const volume = has("solutionMl") ? given.solutionMl : fields.length === 1 ? mostInVessel(given) : undefined;
  return {
    ...(has("resinG") ? { resin: kilogramFromGrams(given.resinG ?? 0, "resinG") } : {}),
    ...(cut === undefined ? {} : { cut }),
    ...(has(...groups.solvent) ? { solvent: poured } : {}),
    ...(volume === undefined ? {} : { solutionVolume: cubicMetreFromMillilitres(volume, "solutionMl") }),
  };
}

const outputOf = (mixed: Mixed, recipe: Recipe): Readonly<Record<AmountField, number>> => ({
  resinG: gramsFromKilogram(mixed.resin),
  ...cutInAllNames(mixed.cut),
  solventMl: (mixed.solvent / densityOfSolvent(recipe.solvent, recipe.temperature).value) * 1e6,
  solventG: gramsFromKilogram(mixed.solvent),
  solutionMl: millilitresFromCubicMetre(mixed.solutionVolume),
});

/** Three amounts are one too many: the refusal says what the first two make of the third. */
function refuseThird(given: MixInput, fields: readonly AmountField[], recipe: Recipe): void {
  const [first, second, third] = fields;
  if (first === undefined || second === undefined || third === undefined) return;
  const would = outputOf(mixFrom(recipe, givenFrom(given, [first, second], recipe)), recipe)[third];
  throw new DomainError({
    code: "contradiction",
    field: third,
    value: given[third],
    because: `${first} and ${second} already make it ${Number(would.toPrecision(5))}; leave one of the three out.`,
  });
}

/** What is read when the recipe is carried out: amounts that were given as measured, else resin and solvent. */
function measuredOut(fields: readonly AmountField[]): Measured {
  if (!fields.includes("solutionMl")) return "resin-and-solvent";
  if (fields.includes("resinG")) return "resin-and-solution";
  return fields.some((f) => (groups.solvent as readonly string[]).includes(f))
    ? "solvent-and-solution"
    : "resin-and-solvent";
}

function solventBy(given: MixInput, told: Instruments): SolventMeasuredBy {
  if (given.solventG !== undefined) return "scale";
  if (given.solventMl !== undefined || told.jugMl > 0) return "jug";
  return told.scaleG > 0 ? "scale" : "jug";
}

function sure(given: MixInput, fields: readonly AmountField[], recipe: Recipe, mixed: Mixed) {
  const { instruments: told, assumed } = instrumentsFromInput(given.instruments);
  const by = solventBy(given, told);
  const slopes = solventSlopes(recipe, told);
  const how = { instruments: told, slopes };
  const measured = measuredOut(fields);
  const weighedOut = { ...how, measured: "resin-and-solvent", solventBy: "scale" } as const;
  const found = uncertaintyOfMix(recipe, mixed, { ...how, measured, solventBy: by });
  const weighed = by === "scale" ? found : uncertaintyOfMix(recipe, mixed, weighedOut);
  return {
    ...surenessOf(found, assumed),
    solventMeasuredBy: by,
    cutStandardUncertaintyIfWeighed: poundsPerUsGallon(weighed.standardUncertainty),
    drawn: drawn(given, { recipe, mixed, measured, solventBy: by }, told),
  };
}

function drawn({ monteCarlo }: MixInput, measurement: Measurement, told: Instruments) {
  if (monteCarlo === undefined) return null;
  const { draws, seed } = monteCarlo;
  const found = drawnCuts(measurement, told, { draws, random: randomFromSeed(seed) });
  const [low, high] = found.symmetric;
  return {
    cutLbPerGal: poundsPerUsGallon(found.mean),
    cutStandardUncertainty: poundsPerUsGallon(found.standardUncertainty),
    interval95: [poundsPerUsGallon(low), poundsPerUsGallon(high)] as [number, number],
  };
}

const poursOf = (parts: readonly SolventPart[], mixed: Mixed, recipe: Recipe) =>
  parts.map(({ composition, massShare }) => {
    const mass = kilogram(mixed.solvent * massShare);
    const density = densityOfSolvent(composition, recipe.temperature).value;
    return { massG: gramsFromKilogram(mass), volumeMl: (mass / density) * 1e6 };
  });

function vesselOf(given: MixInput, solutionMl: number) {
  const most = mostInVessel(given);
  if (given.vesselMl === undefined || most === undefined) return null;
  return {
    solutionFraction: solutionMl / given.vesselMl,
    fits: solutionMl <= most * (1 + 1e-9),
    mostSolutionMl: most,
  };
}

export const mix = defineCalculation({
  name: "mix",
  purpose: "Resin, solvent, cut and volume of a jar, any two from the others, and how sure the cut is",
  input,
  output,
  run: (given) => {
    const parts = solventPartsFromInput(given.solvent);
    const recipe: Recipe = {
      resin: resinsFromInput(given.resins),
      solvent: pouredTogether(parts.map((p) => ({ ...p, mass: kilogram(p.massShare) }))).composition,
      temperature: temperatureFromInput(given.temperatureC),
    };
    const fields = amountsGiven(given);
    refuseThird(given, fields, recipe);
    const mixed = mixFrom(recipe, givenFrom(given, fields, recipe));
    const { solution } = mixed;
    const amounts = outputOf(mixed, recipe);
    const perSolution = solution.resin / mixed.solutionVolume;
    const shares = given.resins ?? [{ massShare: 1 }];
    const how = sure(given, fields, recipe, mixed);
    // in one literal: spread into it, thirty fields would cost more than the mix itself
    return {
      resinG: amounts.resinG,
      solventMl: amounts.solventMl,
      solventG: amounts.solventG,
      solutionMl: amounts.solutionMl,
      cutLbPerGal: amounts.cutLbPerGal,
      cutLbPerImperialGal: amounts.cutLbPerImperialGal,
      gramsPerLitreSolvent: amounts.gramsPerLitreSolvent,
      dryResinG: gramsFromKilogram(solution.resin),
      solutionG: gramsFromKilogram(massOfSolution(solution)),
      gramsPerLitreSolution: perSolution,
      lbPerGalSolution: poundsPerUsGallon(perSolution),
      massFractionResin: massFractionOfResin(solution),
      volumeFractionResin: volumeFractionOfResin(solution, recipe.temperature),
      waterMassFraction: solution.liquid.composition.water ?? 0,
      pours: poursOf(parts, mixed, recipe),
      weighings: shares.map(({ massShare }) => ({ massG: amounts.resinG * massShare })),
      vessel: vesselOf(given, amounts.solutionMl),
      cutStandardUncertainty: how.cutStandardUncertainty,
      contributions: how.contributions,
      instrumentsAssumed: how.instrumentsAssumed,
      solventMeasuredBy: how.solventMeasuredBy,
      cutStandardUncertaintyIfWeighed: how.cutStandardUncertaintyIfWeighed,
      drawn: how.drawn,
      flags: flagsAbout(densityOfSolvent(recipe.solvent, recipe.temperature).flags, "solvent"),
    };
  },
  sources: [
    "TT-S-300A (1977), footnote 1, and ASTM D360 section 6 (a cut is resin added to a gallon of solvent)",
    "Production formula of a government handbook of the trade (31 lb + 10¼ gal → 13⅓ gal: dissolved resin 1205 kg/m³)",
    "OIML R 22 (1975) for ethanol with water",
    "JCGM 100:2008 (GUM), 5.1; JCGM 101:2008, clause 7, for the draws",
  ],
  example: {
    input: { resinG: 57, cutLbPerGal: 2, solvent: { alcohol: "ethanol", volumeFraction: 0.95 } },
    output: { solventMl: 237.84, solventG: 192.98, solutionMl: 285.15, massFractionResin: 0.22802 },
  },
});
