import { aqueous, type Composition, type Liquid, pouredTogether } from "../../core/solution/composition.ts";
import { densityOfSolvent } from "../../core/solution/density.ts";
import { amountForStrength } from "../../core/solution/dilute.ts";
import { volumeOfLiquid } from "../../core/solution/solution.ts";
import {
  massFractionFromUsProof,
  massFractionFromVolumeFraction,
  strengthAt20C,
  strengthAt60F,
  usProofFromMassFraction,
  volumeFractionFromMassFraction,
} from "../../core/solution/strength.ts";
import {
  celsius,
  type Kelvin,
  kelvinFromCelsius,
  kilogram,
  type MassFraction,
  massFraction,
  poundKg,
  usGallonM3,
  volumeFraction,
} from "../../core/units.ts";
import { type Json, NotReadable } from "./topic.ts";

/** What a weighing in air misses, and the brass that it is weighed with: the convention of the gauging tables. */
const air = 1.2; // kg/m³
const brass = 8000;
const water: Composition = { water: massFraction(1) };

const densityAt = (composition: Composition, t: Kelvin): number => densityOfSolvent(composition, t).value;
const poundsInAir = (mass: number, density: number): number =>
  (mass * (1 - air / density)) / (1 - air / brass) / poundKg;
const massOfPoundsInAir = (pounds: number, density: number): number =>
  (pounds * poundKg * (1 - air / brass)) / (1 - air / density);

/** Specific gravity as a hydrometer in air shows it, both at one temperature. */
export const gravityInAir = (composition: Composition, t: Kelvin): number =>
  (densityAt(composition, t) - air) / (densityAt(water, t) - air);

const gravity60F = (density: number) => ({
  lb_per_gal_in_air: poundsInAir(density * usGallonM3, density),
  sg_air_60F_60F: (density - air) / (densityAt(water, strengthAt60F) - air),
  sg_vacuum_60F_60F: density / densityAt(water, strengthAt60F),
});

const numberOf = (given: Json, name: string): number => {
  const x = given[name];
  if (typeof x !== "number") throw new NotReadable(`${name} is not a number`);
  return x;
};

/** A case that says more than is read here is not read. */
export function onlyFields(given: Json, known: readonly string[]): void {
  const other = Object.keys(given).find((name) => !known.includes(name));
  if (other !== undefined) throw new NotReadable(`${other} is not a field that is read here`);
}

/** The forms in which a strength is given in these cases. */
const strengthForms: Readonly<Record<string, (x: number) => MassFraction>> = {
  us_proof: massFractionFromUsProof,
  vol_percent_20C: (x) => massFractionFromVolumeFraction("ethanol", volumeFraction(x / 100), strengthAt20C),
  vol_percent_60F: (x) => massFractionFromVolumeFraction("ethanol", volumeFraction(x / 100), strengthAt60F),
  mass_percent: (x) => massFraction(x / 100),
};

function strengthIn(given: Json): MassFraction {
  const forms = Object.keys(strengthForms).filter((name) => given[name] !== undefined);
  const [form] = forms;
  if (form === undefined || forms.length > 1) throw new NotReadable("it gives no strength, or two");
  return (strengthForms[form] as (x: number) => MassFraction)(numberOf(given, form));
}

const inputOf = (given: Json): Json => given.input as Json;

export function alcoholGauge(given: Json): Json {
  const input = inputOf(given);
  onlyFields(input, Object.keys(strengthForms));
  const strength = strengthIn(input);
  const density = densityAt(aqueous("ethanol", strength), strengthAt60F);
  const gravity = gravity60F(density);
  const wineGallons = 1 / gravity.lb_per_gal_in_air;
  return {
    ...gravity,
    wine_gallons_per_lb_in_air: wineGallons,
    proof_gallons_per_lb_in_air: (wineGallons * usProofFromMassFraction(strength)) / 100,
  };
}

export function alcoholReduce(given: Json): Json {
  const input = inputOf(given);
  onlyFields(input, ["from_us_proof", "to_us_proof", "lb_in_air"]);
  const spirit = aqueous("ethanol", massFractionFromUsProof(numberOf(input, "from_us_proof")));
  const mass = massOfPoundsInAir(numberOf(input, "lb_in_air"), densityAt(spirit, strengthAt60F));
  const target = massFractionFromUsProof(numberOf(input, "to_us_proof"));
  const added = amountForStrength({ mass: kilogram(mass), composition: spirit }, water, "ethanol", target);
  const density = densityAt(water, strengthAt60F);
  return {
    water_lb_in_air: poundsInAir(added, density),
    water_gallons: added / density / usGallonM3,
  };
}

/** Parts by volume at 60 °F, volumes added: the convention of the table that the case is from. */
export function alcoholDenatured(given: Json): Json {
  const input = inputOf(given);
  onlyFields(input, ["parts", "ideal_volumes"]);
  if (input.ideal_volumes !== true) throw new NotReadable("only volumes that add are read here");
  const parts = (input.parts as Json[]).map((part) => {
    onlyFields(part, [...Object.keys(strengthForms), "density_in_air_lb_per_gal", "volumes"]);
    const volumes = numberOf(part, "volumes");
    if (part.density_in_air_lb_per_gal === undefined)
      return { volumes, density: densityAt(aqueous("ethanol", strengthIn(part)), strengthAt60F) };
    const pounds = numberOf(part, "density_in_air_lb_per_gal");
    return { volumes, density: (pounds * poundKg * (1 - air / brass)) / usGallonM3 + air };
  });
  const volumes = parts.reduce((sum, p) => sum + p.volumes, 0);
  return gravity60F(parts.reduce((sum, p) => sum + p.volumes * p.density, 0) / volumes);
}

export function alcoholMixture(given: Json): Json {
  const input = inputOf(given);
  onlyFields(input, ["parts", "t_C"]);
  const t = kelvinFromCelsius(celsius(numberOf(input, "t_C")));
  const liquids = (input.parts as Json[]).map((part): Liquid => {
    onlyFields(part, [...Object.keys(strengthForms), "volumeMl", "massG"]);
    const composition = aqueous("ethanol", strengthIn(part));
    return part.massG === undefined
      ? { composition, mass: kilogram((numberOf(part, "volumeMl") / 1e6) * densityAt(composition, t)) }
      : { composition, mass: kilogram(numberOf(part, "massG") / 1e3) };
  });
  const blend = pouredTogether(liquids);
  const volume = volumeOfLiquid(blend, t);
  return {
    volumeMl: volume * 1e6,
    contractionMl: (liquids.reduce((sum, l) => sum + volumeOfLiquid(l, t), 0) - volume) * 1e6,
    massG: blend.mass * 1e3,
    ...gravity60F(densityAt(blend.composition, strengthAt60F)),
    ...strengthsOf(massFraction(blend.composition.ethanol ?? 0)),
  };
}

const strengthsOf = (strength: MassFraction): Json => ({
  mass_percent: 100 * strength,
  vol_percent_20C: 100 * volumeFractionFromMassFraction("ethanol", strength, strengthAt20C),
  vol_percent_60F: 100 * volumeFractionFromMassFraction("ethanol", strength, strengthAt60F),
  us_proof: usProofFromMassFraction(strength),
});

export function alcoholStrength(given: Json): Json {
  const input = inputOf(given);
  onlyFields(input, Object.keys(strengthForms));
  const strength = strengthIn(input);
  const composition = aqueous("ethanol", strength);
  return {
    ...strengthsOf(strength),
    density_20C_kg_m3: densityAt(composition, strengthAt20C),
    density_60F_kg_m3: densityAt(composition, strengthAt60F),
  };
}
