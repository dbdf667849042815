import type { Component } from "../registry/solvent.ts";
import type { Celsius } from "../units.ts";
import { type ExposureLimit, hazardsOf, lowestLimit } from "./hazards.ts";

export const acts = [
  "mixing",
  "warming",
  "opening",
  "coating indoors",
  "spraying",
  "disposing",
  "rags",
] as const;
export type Act = (typeof acts)[number];

/** A liquid's make-up, as far as it is known: mass fractions of the liquid without the resin. */
export interface Share {
  readonly component: Component;
  readonly massFraction: number;
}

/** One caution, to be said in words where the act is. Figures are estimates, never a clearance. */
export type Caution =
  | { readonly code: "methanol"; readonly limit: ExposureLimit }
  | { readonly code: "ketone"; readonly component: Component; readonly flashPoint: Celsius }
  | { readonly code: "unnamed-share"; readonly massFraction: number }
  | { readonly code: "catches-fire"; readonly component: Component; readonly flashPoint: Celsius }
  | { readonly code: "breathing-limit"; readonly component: Component; readonly limit: ExposureLimit }
  | { readonly code: "through-the-skin"; readonly component: Component }
  | { readonly code: "cartridge-does-not-hold"; readonly component: Component }
  | { readonly code: (typeof plainCodes)[number] };

const plainCodes = [
  "no-flame-in-the-room",
  "warm-in-drawn-water",
  "open-and-draw-away",
  "spray-needs-extraction",
  "not-down-the-drain",
  "rags-flat-and-apart",
  "oil-rags-heat",
] as const;

const ofTheAct: Record<Act, readonly (typeof plainCodes)[number][]> = {
  mixing: ["no-flame-in-the-room"],
  warming: ["no-flame-in-the-room", "warm-in-drawn-water"],
  opening: ["no-flame-in-the-room"],
  "coating indoors": ["no-flame-in-the-room", "open-and-draw-away"],
  spraying: ["no-flame-in-the-room", "spray-needs-extraction"],
  disposing: ["not-down-the-drain"],
  rags: ["rags-flat-and-apart", "oil-rags-heat"],
};

const breathed: readonly Act[] = ["coating indoors", "spraying"];
const vapourIsThere: readonly Act[] = ["mixing", "warming", "opening", "coating indoors", "spraying"];
const touched: readonly Act[] = ["mixing", "coating indoors", "rags"];
const ketones: readonly Component[] = ["acetone", "mek", "mibk"];
/** What a mask's cartridge for organic vapour lets through or holds for minutes only: common practice, and in its leaflet. */
const pastCartridges: readonly Component[] = ["methanol", ...ketones];

/** The part that catches first: the lowest flash point among what is there, however little of it. */
function firstToCatch(present: readonly Component[]): Caution[] {
  const known = present.flatMap((c) => hazardsOf(c) ?? []);
  const first = known.sort((a, b) => a.flashPoint - b.flashPoint)[0];
  return first === undefined
    ? []
    : [{ code: "catches-fire", component: first.component, flashPoint: first.flashPoint }];
}

const rank = (caution: Caution): number => ["methanol", "ketone", "unnamed-share"].indexOf(caution.code);

/**
 * What a front label does not say: methanol first, then ketones, then a part that the data sheet leaves unnamed.
 *
 * @param liquid  components with mass fractions of the liquid
 * @returns       cautions as data, most pressing first
 *
 * Valid:    any liquid of known components
 * Accuracy: however little of it there is
 * Source:   as `hazardsOf`; the order is common practice
 * @example
 * whatTheLabelHides([{ component: "mek", massFraction: 0.03 }]).length // => 1
 */
export function whatTheLabelHides(liquid: readonly Share[]): readonly Caution[] {
  const found = liquid.flatMap(({ component, massFraction }): Caution[] => {
    const hazards = hazardsOf(component);
    if (component === "methanol" && hazards) return [{ code: "methanol", limit: lowestLimit(hazards) }];
    if (ketones.includes(component) && hazards)
      return [{ code: "ketone", component, flashPoint: hazards.flashPoint }];
    return component === "unknown" ? [{ code: "unnamed-share", massFraction }] : [];
  });
  return found.sort((a, b) => rank(a) - rank(b));
}

/**
 * The cautions that belong at an act with a liquid, most pressing first: methanol, then ketones, then what the data
 * sheet leaves unnamed, then fire, air, mask, skin and what the act itself asks.
 *
 * @param act     what is about to be done
 * @param liquid  components with mass fractions of the liquid
 * @returns       cautions as data; the doors put them in words, beside "an estimate, not a clearance"
 *
 * Valid:    any liquid of known components; an unnamed share is cautioned as such
 * Accuracy: the flash point named is that of the first component to catch, taken pure: lower than the mixture's own
 * Source:   as `hazardsOf`; the plain ones are common practice, and give way to the supplier's safety data sheet
 * @example
 * cautionsFor("mixing", [{ component: "ethanol", massFraction: 1 }]).length // => 2
 */
export function cautionsFor(act: Act, liquid: readonly Share[]): readonly Caution[] {
  const there = liquid.filter((share) => share.massFraction > 0 && share.component !== "water");
  const present = there.map((share) => share.component);
  const hidden = whatTheLabelHides(there);
  const fire = vapourIsThere.includes(act) ? firstToCatch(present) : [];
  const air = breathed.includes(act)
    ? present.flatMap((component): Caution[] => {
        const hazards = hazardsOf(component);
        return hazards && component !== "methanol"
          ? [{ code: "breathing-limit", component, limit: lowestLimit(hazards) }]
          : [];
      })
    : [];
  const skin = touched.includes(act)
    ? present.flatMap((component): Caution[] =>
        component !== "methanol" && hazardsOf(component)?.goesThroughSkin
          ? [{ code: "through-the-skin", component }]
          : [],
      )
    : [];
  const mask = breathed.includes(act)
    ? present
        .filter((component) => pastCartridges.includes(component))
        .map((component): Caution => ({ code: "cartridge-does-not-hold", component }))
    : [];
  return [...hidden, ...fire, ...air, ...mask, ...skin, ...ofTheAct[act].map((code) => ({ code }))];
}
