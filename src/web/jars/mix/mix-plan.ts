import type { z } from "zod";
import type { TypedQuantity } from "../../../core/notebook/kinds/parts.ts";
import { parseQuantity } from "../../../core/quantity/parse-quantity.ts";
import { calculate } from "../../../core/registry/calculation.ts";
import { mix } from "../../../core/registry/mix.ts";
import type { Problem } from "../../../core/registry/problem.ts";
import { solventOf } from "../../../core/registry/solvent-of.ts";
import type { Result } from "../../../core/result.ts";
import type { Composition } from "../../../core/solution/composition.ts";
import { kitchenInstruments } from "../../../core/solution/instruments.ts";
import { cut, poundsPerUsGallonFromCut } from "../../../core/units.ts";
import type { InstrumentView, MaterialView } from "../../../core/views/material.ts";
import { isWeight } from "../shop-units.ts";

type MixInput = z.input<typeof mix.input>;
export type Mixed = z.output<typeof mix.output>;

/** What was typed of a mix and could be read; any two give the rest. */
export interface MixGiven {
  readonly flakes: TypedQuantity | undefined;
  readonly cut: TypedQuantity | undefined;
  /** By weight or by volume. */
  readonly alcohol: TypedQuantity | undefined;
  readonly makes: TypedQuantity | undefined;
  /** Of the glass, m³. */
  readonly vessel: number | undefined;
}

/** What it is mixed from and measured with. */
export interface MixFrom {
  readonly resin: MaterialView | undefined;
  readonly composition: Composition;
  readonly scale: InstrumentView | undefined;
  readonly jug: InstrumentView | undefined;
}

/** How many of the four were given; the glass stands in for what it makes when there is only one. */
export const givenCount = (given: MixGiven): number =>
  [given.flakes, given.cut, given.alcohol, given.makes].filter((one) => one !== undefined).length;

function flakesOf(resin: MaterialView | undefined): Pick<MixInput, "resins"> {
  const made = resin?.resin;
  if (made === undefined || made === null) return {};
  return {
    resins: [
      {
        moistureMassFraction: made.moisture ?? 0,
        waxMassFraction: made.wax ?? 0,
        insolubleMassFraction: made.insoluble ?? 0,
      },
    ],
  };
}

/** One's own scale and jug, the rest as in a kitchen; nothing of one's own: a kitchen's are assumed, and said. */
function instrumentsOf({ scale, jug }: MixFrom): Pick<MixInput, "instruments"> {
  const [scaleU, jugU] = [scale?.standardUncertainty?.si, jug?.standardUncertainty?.si];
  if (scaleU === undefined && jugU === undefined) return {};
  return {
    instruments: {
      ...kitchenInstruments,
      ...(scaleU === undefined ? {} : { scaleG: scaleU * 1e3 }),
      ...(jugU === undefined ? {} : { jugMl: jugU * 1e6 }),
    },
  };
}

/** The mix that was asked for, or what stands against it; undefined while too little is given. */
export function mixPlan(given: MixGiven, from: MixFrom): Result<Mixed, Problem> | undefined {
  const { flakes, cut: cutGiven, alcohol, makes, vessel } = given;
  if (givenCount(given) + (vessel === undefined ? 0 : 1) < 2 || givenCount(given) === 0) return undefined;
  const input: MixInput = {
    solvent: solventOf(from.composition),
    ...flakesOf(from.resin),
    ...instrumentsOf(from),
    ...(flakes === undefined ? {} : { resinG: flakes.si * 1e3 }),
    ...(cutGiven === undefined ? {} : { cutLbPerGal: poundsPerUsGallonFromCut(cut(cutGiven.si)) }),
    ...(alcohol === undefined
      ? {}
      : isWeight(alcohol)
        ? { solventG: alcohol.si * 1e3 }
        : { solventMl: alcohol.si * 1e6 }),
    ...(makes === undefined ? {} : { solutionMl: makes.si * 1e6 }),
    ...(vessel === undefined ? {} : { vesselMl: vessel * 1e6 }),
  };
  return calculate(mix, input) as Result<Mixed, Problem>;
}

/** One meaning of an alcohol typed in ounces, with what it would make. */
export interface Meant {
  readonly typed: string;
  readonly by: "jug" | "scale";
  readonly mixed: Mixed;
}

/** What an alcohol typed so would make, beside the flakes that were given; undefined while there are none. */
export function ifMeant(typed: string, given: MixGiven, from: MixFrom): Meant | undefined {
  const read = parseQuantity(typed, { dimensions: ["volume", "mass"] });
  if (!read.ok || given.flakes === undefined) return undefined;
  const { unit, si } = read.value;
  const alcohol = { typed, unit, si };
  const meant = mixPlan({ ...given, cut: undefined, makes: undefined, alcohol }, from);
  return meant?.ok ? { typed, by: isWeight(alcohol) ? "scale" : "jug", mixed: meant.value } : undefined;
}

const typedAs = (number: number, unit: "g" | "ml"): TypedQuantity => ({
  typed: `${number} ${unit}`,
  unit,
  si: unit === "g" ? number / 1e3 : number / 1e6,
});

/** A weight that was worked out, to what a kitchen scale shows. */
export const worksOutGrams = (g: number): TypedQuantity =>
  typedAs(g < 100 ? Number(g.toFixed(1)) : Math.round(g), "g");
export const worksOutMillilitres = (ml: number): TypedQuantity => typedAs(Math.round(ml), "ml");
