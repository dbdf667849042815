import type { z } from "zod";
import type { TypedQuantity } from "../../../core/notebook/kinds/parts.ts";
import { calculate } from "../../../core/registry/calculation.ts";
import { mix } from "../../../core/registry/mix.ts";
import type { Problem } from "../../../core/registry/problem.ts";
import { resinsFromInput } from "../../../core/registry/solution-input.ts";
import { solventOf } from "../../../core/registry/solvent-of.ts";
import type { Result } from "../../../core/result.ts";
import type { Composition } from "../../../core/solution/composition.ts";
import { kitchenInstruments } from "../../../core/solution/instruments.ts";
import type { Recipe } from "../../../core/solution/mix.ts";
import { usualPartialDensity } from "../../../core/solution/resin.ts";
import { strengthAt20C } from "../../../core/solution/strength.ts";
import { cut, poundsPerUsGallonFromCut } from "../../../core/units.ts";
import type { InstrumentView } from "../../../core/views/material.ts";
import type { flakesOf } from "../flakes-of.ts";
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
  /** Each bag of flakes, and its share of the weight. */
  readonly resins: readonly (ReturnType<typeof flakesOf> & { readonly massShare: number })[];
  /** All bottles as one alcohol. */
  readonly composition: Composition;
  readonly scale: InstrumentView | undefined;
  readonly jug: InstrumentView | undefined;
}

/** How many of the four were given; the glass stands in for what it makes when there is only one. */
export const givenCount = (given: MixGiven): number =>
  [given.flakes, given.cut, given.alcohol, given.makes].filter((one) => one !== undefined).length;

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
    resins: [...from.resins],
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

/** The same as the formulas take it. */
export const recipeOf = (from: MixFrom): Recipe => ({
  resin: resinsFromInput([
    ...from.resins.map((one) => ({ ...one, partialDensityKgM3: usualPartialDensity })),
  ]),
  solvent: from.composition,
  temperature: strengthAt20C,
});
