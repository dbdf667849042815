import { pouredTogether } from "../solution/composition.ts";
import { celsius, kelvin, kelvinFromCelsius, kilogram, massFraction, metre } from "../units.ts";
import { type Blush, blushOfSetup } from "./blush.ts";
import type { DryingSetup } from "./drying.ts";

export const changes = ["warmer wood", "drier air", "thinner coat", "slower alcohol"] as const;

/** One thing changed, and what comes of it. */
export interface Help {
  readonly change: (typeof changes)[number];
  /** Wood [K], relative humidity, wet thickness [m], or the share of n-butanol by mass. */
  readonly value: number;
  readonly blush: Blush;
}

/** As far as a shop goes: wood at 35 °C, air of 30 %, a quarter of the coat, a quarter of n-butanol. From memory. */
const furthest = {
  wood: kelvinFromCelsius(celsius(35)),
  humidity: 0.3,
  thickness: 0.25,
  slowShare: 0.25,
} as const;
const halvings = 7;

/** A change that can be made by more or less: between what is now and the furthest that a shop goes. */
interface Change {
  readonly change: Help["change"];
  readonly now: number;
  readonly furthest: number;
  readonly made: (value: number) => DryingSetup;
}

function changesOf(setup: DryingSetup): readonly Change[] {
  const { wood, air, applied } = setup;
  const warmer: Change[] =
    wood === null || wood.temperature >= furthest.wood
      ? []
      : [
          {
            change: "warmer wood",
            now: wood.temperature,
            furthest: furthest.wood,
            made: (t) => ({
              ...setup,
              liquidTemperature: kelvin(t),
              wood: { ...wood, temperature: kelvin(t) },
            }),
          },
        ];
  const drier: Change[] =
    air.relativeHumidity <= furthest.humidity
      ? []
      : [
          {
            change: "drier air",
            now: air.relativeHumidity,
            furthest: furthest.humidity,
            made: (relativeHumidity) => ({ ...setup, air: { ...air, relativeHumidity } }),
          },
        ];
  return [
    ...warmer,
    ...drier,
    {
      change: "thinner coat",
      now: applied.thickness,
      furthest: furthest.thickness * applied.thickness,
      made: (thickness) => ({ ...setup, applied: { ...applied, thickness: metre(thickness) } }),
    },
    {
      change: "slower alcohol",
      now: 0,
      furthest: furthest.slowShare,
      made: (share) => withSlowAlcohol(setup, share),
    },
  ];
}

function withSlowAlcohol(setup: DryingSetup, share: number): DryingSetup {
  const slow = { mass: kilogram(share), composition: { "n-butanol": massFraction(1) } };
  const there = { mass: kilogram(1 - share), composition: setup.applied.composition };
  const { composition } = pouredTogether([there, slow]);
  return { ...setup, applied: { ...setup.applied, composition } };
}

/** The least of a change that is enough; all of it where that is not, but helps; nothing where it does not. */
function helpOf(given: Change, now: Blush, threshold: number): Help[] {
  const at = (part: number): number => given.now + part * (given.furthest - given.now);
  const judged = (part: number): Blush | undefined => blushOfSetup(given.made(at(part)), threshold);
  const all = judged(1);
  if (all?.margin == null || now.margin === null || all.margin <= now.margin) return [];
  if (all.word !== "unlikely") return [{ change: given.change, value: given.furthest, blush: all }];
  let [low, high, blush]: [number, number, Blush] = [0, 1, all];
  for (let i = 0; i < halvings; i++) {
    const middle = (low + high) / 2;
    const there = judged(middle);
    if (there?.word === "unlikely") [high, blush] = [middle, there];
    else low = middle;
  }
  return [{ change: given.change, value: at(high), blush }];
}

/**
 * What would keep a coat from turning white, each worked out by itself with all else as it is.
 *
 * The least warming of the wood (to 35 °C at most), drying of the air (to 30 %), thinning of the coat (to a quarter) and
 * n-butanol in the liquid (a quarter) that make it unlikely, by halving; all of it where that is not enough but helps.
 *
 * @param setup      of the coat
 * @param now        how it stands
 * @param threshold  as `blushOf`
 * @returns          the changes that help, with their value and what comes of them; none when it is unlikely already
 *
 * Valid:    as `dryFilm`
 * Accuracy: the value to a hundredth of its range; as `blushOf`
 * Source:   as `blushOf`
 */
export function whatWouldHelp(setup: DryingSetup, now: Blush, threshold = 0): readonly Help[] {
  if (now.word === "unlikely") return [];
  return changesOf(setup).flatMap((change) => helpOf(change, now, threshold));
}
