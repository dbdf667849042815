import { pouredTogether } from "../solution/composition.ts";
import { celsius, type Kelvin, kelvin, kelvinFromCelsius, kilogram, massFraction, metre } from "../units.ts";
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

const warmestWood = kelvinFromCelsius(celsius(35));
const driestAir = 0.3;
const slowShare = 0.1;
const halvings = 7;

const isEnough = (blush: Blush | undefined): blush is Blush => blush?.word === "unlikely";

/** The least change between none (0) and all (1) that is enough; undefined where all is not. */
function leastChange(of: (part: number) => DryingSetup): { part: number; blush: Blush } | undefined {
  const all = blushOfSetup(of(1));
  if (!isEnough(all)) return undefined;
  let [low, high, blush] = [0, 1, all];
  for (let i = 0; i < halvings; i++) {
    const middle = (low + high) / 2;
    const there = blushOfSetup(of(middle));
    if (isEnough(there)) [high, blush] = [middle, there];
    else low = middle;
  }
  return { part: high, blush };
}

function warmerWood(setup: DryingSetup): Help[] {
  const { wood } = setup;
  if (wood === null || wood.temperature >= warmestWood) return [];
  const at = (part: number): Kelvin => kelvin(wood.temperature + part * (warmestWood - wood.temperature));
  const found = leastChange((part) => ({
    ...setup,
    liquidTemperature: at(part),
    wood: { ...wood, temperature: at(part) },
  }));
  return found === undefined ? [] : [{ change: "warmer wood", value: at(found.part), blush: found.blush }];
}

function drierAir(setup: DryingSetup): Help[] {
  const now = setup.air.relativeHumidity;
  if (now <= driestAir) return [];
  const at = (part: number): number => now + part * (driestAir - now);
  const found = leastChange((part) => ({ ...setup, air: { ...setup.air, relativeHumidity: at(part) } }));
  return found === undefined ? [] : [{ change: "drier air", value: at(found.part), blush: found.blush }];
}

/** A change that is either made or not: told as it comes out, enough or not, where it helps at all. */
function once(change: Help["change"], value: number, now: Blush, setup: DryingSetup): Help[] {
  const blush = blushOfSetup(setup);
  const helps = blush?.margin != null && now.margin !== null && blush.margin > now.margin;
  return helps ? [{ change, value, blush }] : [];
}

function withSlowAlcohol(setup: DryingSetup): DryingSetup {
  const slow = { mass: kilogram(slowShare), composition: { "n-butanol": massFraction(1) } };
  const there = { mass: kilogram(1 - slowShare), composition: setup.applied.composition };
  const { composition } = pouredTogether([there, slow]);
  return { ...setup, applied: { ...setup.applied, composition } };
}

/**
 * What would keep a coat from turning white, each worked out by itself with all else as it is.
 *
 * The least warming of the wood (to 35 °C at most) and the least drying of the air (to 30 % at most) that make it
 * unlikely, by halving; half the wet thickness; a tenth of n-butanol.
 *
 * @param setup  of the coat
 * @param now    how it stands
 * @returns      the changes that help, with their value and what comes of them; none when it is unlikely already
 *
 * Valid:    as `dryFilm`
 * Accuracy: the value to a hundredth of its range; as `blushOf`
 * Source:   as `blushOf`
 */
export function whatWouldHelp(setup: DryingSetup, now: Blush): readonly Help[] {
  if (now.word === "unlikely") return [];
  const thin = metre(setup.applied.thickness / 2);
  return [
    ...warmerWood(setup),
    ...drierAir(setup),
    ...once("thinner coat", thin, now, { ...setup, applied: { ...setup.applied, thickness: thin } }),
    ...once("slower alcohol", slowShare, now, withSlowAlcohol(setup)),
  ];
}
