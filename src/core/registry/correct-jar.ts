import { z } from "zod";
import { DomainError } from "../domain-error.ts";
import { massToAdd, simpleAddition, solutionOfFlakes } from "../solution/correct.ts";
import { densityOfSolvent } from "../solution/density.ts";
import type { Instruments } from "../solution/instruments.ts";
import {
  type FlakesAdded,
  type Poured,
  solventAsPoured,
  uncertaintyOfPouring,
} from "../solution/pour-uncertainty.ts";
import { cutOfSolution, massOfSolution, type Solution, volumeOfSolution } from "../solution/solution.ts";
import {
  type Cut,
  cubicMetre,
  cutFromPoundsPerUsGallon,
  gramsFromKilogram,
  type Kelvin,
  type Kilogram,
  kilogram,
  millilitresFromCubicMetre,
  poundsPerUsGallonFromCut,
} from "../units.ts";
import { amountG, amountMl, contributions, cutLbPerGal } from "./amount.ts";
import { defineCalculation } from "./calculation.ts";
import { poundsPerUsGallon } from "./cut-names.ts";
import { flag, flagsAbout } from "./flag.ts";
import { jar, jarAsPoured, jarFromInput } from "./jar-input.ts";
import { describeJar, jarOutput } from "./jar-output.ts";
import { type Problem, problemFromDomain } from "./problem.ts";
import {
  instrumentsFromInput,
  resinsFromInput,
  solventFromInput,
  temperatureFromInput,
} from "./solution-input.ts";
import { instruments, resins, solvent } from "./solvent.ts";

/** Room above the liquid, as for a mix. */
const usualHeadspace = 0.1;

const have = { haveG: amountG.optional(), haveMl: amountMl.optional() };
const name = z.string().min(1).describe("as it is called on the shelf");
const onShelf = z.union([
  z.strictObject({ name, solvent, ...have }),
  z.strictObject({ name, resins, haveG: amountG.optional() }),
  z.strictObject({ name, jar }),
]);
type OnShelf = z.output<typeof onShelf>;

const input = z.strictObject({
  jar,
  toCutLbPerGal: cutLbPerGal,
  shelf: z.array(onShelf).min(1).max(50),
  vesselMl: amountMl.optional(),
  headspaceFraction: z.number().min(0).max(0.9).optional(),
  temperatureC: z.number().optional(),
  instruments: instruments.optional(),
});
type CorrectInput = z.output<typeof input>;

const way = z.object({
  name: z.string(),
  what: z.enum(["solvent", "flakes", "jar"]),
  addG: z.number(),
  /** Null for flakes: a measure of them is mostly air. */
  addMl: z.number().nullable(),
  /** Whether there is as much on the shelf; null where that was not told. */
  suffices: z.boolean().nullable(),
  missingG: z.number(),
  result: z.object(jarOutput),
  fits: z.boolean().nullable(),
  /** Where it does not fit: pour off so much of the jar first, and add the less. */
  pourOffFirst: z.object({ ml: z.number(), g: z.number(), thenAddG: z.number() }).nullable(),
  simpleRatioWouldGive: z.object({
    addG: z.number(),
    addMl: z.number().nullable(),
    cutLbPerGal: z.number(),
  }),
  cutStandardUncertainty: z.number(),
  contributions,
  flags: z.array(flag),
});
type Way = z.output<typeof way>;

/** Something on the shelf as the formulas take it: what it is made of, how much of it there is, how it is measured out. */
interface Addition {
  readonly what: Way["what"];
  readonly made: Solution;
  readonly haveKg: number | undefined;
  readonly poured: (mass: Kilogram) => { readonly part?: Poured; readonly flakes?: FlakesAdded };
}

const oneKilogram = kilogram(1);

function solventAddition(item: Extract<OnShelf, { solvent: unknown }>, at: string, t: Kelvin): Addition {
  const composition = solventFromInput(item.solvent, `${at}.solvent`);
  const density = densityOfSolvent(composition, t).value;
  if (item.haveG !== undefined && item.haveMl !== undefined)
    throw new DomainError({
      code: "contradiction",
      field: `${at}.haveMl`,
      value: item.haveMl,
      because: "haveG says it already; give one of them.",
    });
  const weight = item.haveMl === undefined ? undefined : (item.haveMl / 1e6) * density;
  return {
    what: "solvent",
    made: {
      resin: kilogram(0),
      wax: kilogram(0),
      insoluble: kilogram(0),
      resinVolume: cubicMetre(0),
      liquid: { mass: oneKilogram, composition },
    },
    haveKg: item.haveG === undefined ? weight : item.haveG / 1e3,
    poured: (mass) => ({ part: solventAsPoured(composition, mass / density, "jug") }),
  };
}

function additionOf(item: OnShelf, at: string, temperature: Kelvin): Addition {
  if ("solvent" in item) return solventAddition(item, at, temperature);
  if ("resins" in item) {
    const resin = resinsFromInput(item.resins, `${at}.resins`);
    return {
      what: "flakes",
      made: solutionOfFlakes(oneKilogram, resin),
      haveKg: item.haveG === undefined ? undefined : item.haveG / 1e3,
      poured: (mass) => ({ flakes: { mass, resin } }),
    };
  }
  const made = jarFromInput(item.jar, `${at}.jar`, temperature);
  const whole = jarAsPoured(item.jar, `${at}.jar`);
  return {
    what: "jar",
    made,
    haveKg: massOfSolution(made),
    poured: (mass) => ({ part: { ...whole, amount: (whole.amount * mass) / massOfSolution(made) } }),
  };
}

interface Wanted {
  readonly given: CorrectInput;
  readonly jar: Solution;
  readonly target: Cut;
  readonly temperature: Kelvin;
  readonly told: Instruments;
}

/** Amounts scale: what is poured off first takes its share of the addition with it. */
function room({ given, jar, temperature }: Wanted, resultMl: number, addedG: number) {
  if (given.vesselMl === undefined) return { fits: null, pourOffFirst: null };
  const most = given.vesselMl * (1 - (given.headspaceFraction ?? usualHeadspace));
  if (resultMl <= most * (1 + 1e-9)) return { fits: true, pourOffFirst: null };
  const kept = most / resultMl;
  const jarMl = millilitresFromCubicMetre(volumeOfSolution(jar, temperature));
  const g = (1 - kept) * gramsFromKilogram(massOfSolution(jar));
  return { fits: false, pourOffFirst: { ml: (1 - kept) * jarMl, g, thenAddG: kept * addedG } };
}

function sure({ given, temperature, told }: Wanted, addition: Addition, added: Kilogram) {
  const { part, flakes } = addition.poured(added);
  const poured = [jarAsPoured(given.jar, "jar"), ...(part === undefined ? [] : [part])];
  const found = uncertaintyOfPouring(poured, temperature, told, { flakes });
  return {
    cutStandardUncertainty: poundsPerUsGallon(found.standardUncertainty),
    contributions: [...found.contributions],
  };
}

function wayWith(wanted: Wanted, item: OnShelf, addition: Addition): Way {
  const { jar, target, temperature } = wanted;
  const { made, what, haveKg } = addition;
  const { added, result } = massToAdd(jar, target, made);
  const mlOf = (mass: number): number | null =>
    what === "flakes" ? null : (volumeOfSolution(made, temperature) * 1e6 * mass) / massOfSolution(made);
  const simple = simpleAddition(jar, target, made, what === "flakes" ? "weight" : "volume", temperature);
  const described = describeJar(result, temperature);
  const missing = haveKg === undefined ? 0 : Math.max(0, added - haveKg);
  return {
    name: item.name,
    what,
    addG: gramsFromKilogram(added),
    addMl: mlOf(added),
    suffices: haveKg === undefined ? null : missing === 0,
    missingG: missing * 1e3,
    result: described,
    ...room(wanted, described.solutionMl, gramsFromKilogram(added)),
    simpleRatioWouldGive: {
      addG: gramsFromKilogram(simple.added),
      addMl: mlOf(simple.added),
      cutLbPerGal: poundsPerUsGallonFromCut(simple.cut),
    },
    ...sure(wanted, addition, added),
    flags: flagsAbout(densityOfSolvent(result.liquid.composition, temperature).flags, "shelf"),
  };
}

const cannot = z.object({ name: z.string(), because: z.string() });

/** What is on the shelf but lies on the jar's own side of the wanted cut does not help, and is told with its limits. */
function tried(wanted: Wanted, item: OnShelf, at: string): Way | { name: string; because: string } {
  const addition = additionOf(item, at, wanted.temperature);
  try {
    return wayWith(wanted, item, addition);
  } catch (error) {
    if (!(error instanceof DomainError) || error.detail.field !== "toCutLbPerGal") throw error;
    const problem: Problem = problemFromDomain(error.detail);
    return { name: item.name, because: problem.message };
  }
}

function refuseWhatIsThere(jarCut: Cut, given: CorrectInput): void {
  const now = poundsPerUsGallonFromCut(jarCut);
  if (Math.abs(given.toCutLbPerGal / now - 1) > 1e-9) return;
  throw new DomainError({
    code: "contradiction",
    field: "toCutLbPerGal",
    value: given.toCutLbPerGal,
    because: "The jar is at that cut already.",
  });
}

export const correctJar = defineCalculation({
  name: "correct-jar",
  purpose:
    "What on the shelf brings a mis-mixed jar to the wanted cut, how much of it, and whether that fits",
  input,
  output: z.object({
    ways: z.array(way),
    /** On the shelf, but no amount of it would do. */
    cannot: z.array(cannot),
    instrumentsAssumed: z.boolean(),
  }),
  run: (given) => {
    const temperature = temperatureFromInput(given.temperatureC);
    const jar = jarFromInput(given.jar, "jar", temperature);
    const { instruments: told, assumed } = instrumentsFromInput(given.instruments);
    const target = cutFromPoundsPerUsGallon(given.toCutLbPerGal, "toCutLbPerGal");
    refuseWhatIsThere(cutOfSolution(jar), given);
    const wanted: Wanted = { given, jar, target, temperature, told };
    const all = given.shelf.map((item, i) => tried(wanted, item, `shelf[${i}]`));
    return {
      ways: all.filter((one): one is Way => "addG" in one),
      cannot: all.filter((one): one is z.output<typeof cannot> => "because" in one),
      instrumentsAssumed: assumed,
    };
  },
  sources: [
    "Conservation of mass",
    "OIML R 22 (1975) for ethanol with water",
    "JCGM 100:2008 (GUM), 5.1",
    "Common practice for the simple ratio",
  ],
  example: {
    input: {
      jar: { solutionMl: 500, cutLbPerGal: 2.6, solvent: { alcohol: "ethanol", volumeFraction: 0.95 } },
      toCutLbPerGal: 2,
      vesselMl: 750,
      shelf: [
        { name: "ethanol 95 %", solvent: { alcohol: "ethanol", volumeFraction: 0.95 }, haveMl: 1000 },
        {
          name: "jar L3, a 1 lb cut",
          jar: { solutionMl: 300, cutLbPerGal: 1, solvent: { alcohol: "ethanol", volumeFraction: 0.95 } },
        },
        { name: "lemon flakes", resins: [{}] },
      ],
    },
    output: { instrumentsAssumed: true },
  },
});
