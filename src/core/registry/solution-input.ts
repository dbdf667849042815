import { DomainError } from "../domain-error.ts";
import { aqueous, type Composition, pouredTogether } from "../solution/composition.ts";
import { densityOfSolvent } from "../solution/density.ts";
import { type Instruments, kitchenInstruments } from "../solution/instruments.ts";
import { blendOfResins, plainResin, type ResinBlend } from "../solution/resin.ts";
import {
  massFractionFromUsProof,
  massFractionFromVolumeFraction,
  strengthAt20C,
} from "../solution/strength.ts";
import {
  celsius,
  type Kelvin,
  kelvinFromCelsius,
  kilogram,
  kilogramPerCubicMetre,
  massFraction,
  volumeFraction,
} from "../units.ts";
import type { InstrumentsInput, LiquidInput, ResinsInput, SolventInput } from "./solvent.ts";

/** Volumes are at 20 °C unless told; the density says which temperatures it knows. */
export const temperatureFromInput = (x = 20, field = "temperatureC"): Kelvin =>
  kelvinFromCelsius(celsius(x, field));

const contradiction = (field: string, value: unknown, because: string): DomainError =>
  new DomainError({ code: "contradiction", field, value, because });

/** A refusal from inside a liquid, named by the path that the caller wrote. */
function at<T>(field: string, work: () => T): T {
  try {
    return work();
  } catch (error) {
    if (!(error instanceof DomainError) || field === "") throw error;
    throw new DomainError({ ...error.detail, field: `${field}.${error.detail.field}` });
  }
}

/** Paths as the person wrote them: nothing in front of a field at the top. */
const inside = (field: string, name: string): string => (field === "" ? name : `${field}.${name}`);

function checkStrength(input: LiquidInput, field: string): void {
  const given = (["massFraction", "volumeFraction", "usProof"] as const).filter(
    (k) => input[k] !== undefined,
  );
  const [first, second] = given;
  if (first !== undefined && second !== undefined)
    throw contradiction(
      inside(field, second),
      input[second],
      `${first} says the strength already; give one of them.`,
    );
  if (input.atTemperatureC !== undefined && input.volumeFraction === undefined)
    throw contradiction(
      inside(field, "atTemperatureC"),
      input.atTemperatureC,
      "It belongs to volumeFraction, which is not given.",
    );
  if (input.alcohol === "water" && first !== undefined)
    throw contradiction(inside(field, first), input[first], "Water has no strength.");
  if (input.usProof !== undefined && input.alcohol !== "ethanol")
    throw contradiction(inside(field, "usProof"), input.usProof, "Proof is defined for ethanol alone.");
}

/** An alcohol with its water, by mass, from any form of strength that a label carries. */
export function liquidFromInput(input: LiquidInput, field = ""): Composition {
  checkStrength(input, field);
  return at(field, () => {
    if (input.usProof !== undefined) return aqueous("ethanol", massFractionFromUsProof(input.usProof));
    if (input.volumeFraction === undefined)
      return aqueous(input.alcohol, massFraction(input.massFraction ?? 1));
    const stated = temperatureFromInput(input.atTemperatureC, "atTemperatureC");
    const share = atStatedTemperature(() =>
      massFractionFromVolumeFraction(input.alcohol, volumeFraction(input.volumeFraction ?? 1), stated),
    );
    return aqueous(input.alcohol, share);
  });
}

/** Inside a strength, the temperature that a density refuses is the one the strength is stated at. */
function atStatedTemperature<T>(work: () => T): T {
  try {
    return work();
  } catch (error) {
    if (error instanceof DomainError && error.detail.field === "temperatureC")
      throw new DomainError({ ...error.detail, field: "atTemperatureC" });
    throw error;
  }
}

/** A liquid of a solvent and its share of the mass. */
export interface SolventPart {
  readonly composition: Composition;
  readonly massShare: number;
}

type PartInput = Extract<SolventInput, { parts: unknown }>["parts"][number];

function sharesOf(parts: readonly PartInput[], field: string): "massShare" | "volumeShare" {
  const [first] = parts;
  const basis = first?.volumeShare === undefined ? "massShare" : "volumeShare";
  const other = basis === "massShare" ? "volumeShare" : "massShare";
  parts.forEach((part, i) => {
    const here = inside(field, `parts[${i}]`);
    if (part[other] !== undefined)
      throw contradiction(`${here}.${other}`, part[other], "Shares are all of mass or all of volume.");
    if (part[basis] === undefined)
      throw new DomainError({ code: "missing", field: `${here}.${basis}`, value: undefined });
  });
  const sum = parts.reduce((total, part) => total + (part[basis] ?? 0), 0);
  if (!(Math.abs(sum - 1) <= 1e-6))
    throw contradiction(inside(field, "parts"), sum, `The values of ${basis} sum to 1.`);
  return basis;
}

/** The liquids of a solvent, each with its share of the mass. Shares of volume are those at 20 °C before mixing. */
export function solventPartsFromInput(input: SolventInput, field = "solvent"): readonly SolventPart[] {
  if (!("parts" in input)) return [{ composition: liquidFromInput(input, field), massShare: 1 }];
  const basis = sharesOf(input.parts, field);
  const masses = input.parts.map((part, i) => {
    const { massShare, volumeShare, ...liquid } = part;
    const composition = liquidFromInput(liquid, inside(field, `parts[${i}]`));
    const weight =
      basis === "massShare"
        ? (massShare ?? 0)
        : (volumeShare ?? 0) * densityOfSolvent(composition, strengthAt20C).value;
    return { composition, weight };
  });
  const total = masses.reduce((sum, m) => sum + m.weight, 0);
  return masses.map(({ composition, weight }) => ({ composition, massShare: weight / total }));
}

/** A solvent as mass fractions, from a label, a data sheet or a recipe of several bottles. */
export const solventFromInput = (input: SolventInput, field = "solvent"): Composition =>
  pouredTogether(
    solventPartsFromInput(input, field).map(({ composition, massShare }) => ({
      composition,
      mass: kilogram(massShare),
    })),
  ).composition;

export const resinsFromInput = (input: ResinsInput | undefined, field = "resins"): ResinBlend =>
  blendOfResins(
    (input ?? []).length === 0
      ? [plainResin]
      : (input ?? []).map((r) => ({
          massShare: r.massShare,
          moisture: massFraction(r.moistureMassFraction),
          wax: massFraction(r.waxMassFraction),
          insoluble: massFraction(r.insolubleMassFraction),
          partialDensity: kilogramPerCubicMetre(r.partialDensityKgM3),
        })),
    field,
  );

/** Nothing told: a kitchen's instruments are assumed, and said. Told: what is left out is taken as exact. */
export const instrumentsFromInput = (
  input: InstrumentsInput | undefined,
): { readonly instruments: Instruments; readonly assumed: boolean } =>
  input === undefined
    ? { instruments: kitchenInstruments, assumed: true }
    : {
        instruments: {
          scaleG: input.scaleG ?? 0,
          jugMl: input.jugMl ?? 0,
          temperatureC: input.temperatureC ?? 0,
          strengthVolumeFraction: input.strengthVolumeFraction ?? 0,
          moistureMassFraction: input.moistureMassFraction ?? 0,
          partialDensityKgM3: input.partialDensityKgM3 ?? 0,
        },
        assumed: false,
      };
