import type { Component } from "../../../core/registry/solvent.ts";
import type { Act } from "../../../core/safety/cautions.ts";
import type { ExposureLimit } from "../../../core/safety/hazards.ts";

const names: Partial<Record<Component, string>> = {
  mek: "MEK",
  mibk: "MIBK",
  unknown: "something not named",
};
const name = (component: Component): string => names[component] ?? component.replaceAll("-", " ");
const degrees = (celsius: number): string => `${celsius < 0 ? "−" : ""}${Math.abs(Math.round(celsius))} °C`;
const limit = ({ ppm, over, body, year, seen }: ExposureLimit): string =>
  `${ppm} ppm ${over === "day" ? "over a working day" : "at any time"} (${body} ${year}${seen === "document" ? "" : ", from memory"})`;

/** What stands first at each act. */
const leads: Record<Act, string> = {
  mixing: "Open it away from flame.",
  warming: "Warm it only in hot water drawn elsewhere.",
  opening: "Open it away from flame.",
  "coating indoors": "Window open. No flame.",
  spraying: "No spraying without extraction. No flame.",
  disposing: "Not down the drain.",
  rags: "Rags flat and apart, outdoors.",
};

export const cautions = {
  lead: (act: Act) => leads[act],
  methanol: (l: ExposureLimit) =>
    `There is methanol in it: poisonous to breathe and through the skin. No more in the air than ${limit(l)}.`,
  ketone: (component: Component, flash: number) =>
    `There is ${name(component)} in it, which the front label does not say. It catches fire from about ${degrees(flash)} up.`,
  unnamed: (share: number) =>
    `${Math.round(share * 100)} % of it is not named: take it for the worst of its kind until its data sheet says otherwise.`,
  fire: (component: Component, flash: number, air: number | undefined) =>
    `Vapour can catch from about ${degrees(flash)} up (${name(component)})${air === undefined ? "" : `; this shop is at ${degrees(air)}`}.`,
  breathing: (component: Component, l: ExposureLimit) =>
    `${name(component)}, no more in the air than ${limit(l)}.`,
  cartridge: (component: Component) =>
    `A mask’s cartridge for organic vapour does not hold ${name(component)} for long, if at all: fresh air instead.`,
  skin: (component: Component) => `${name(component)} goes through the skin: gloves.`,
  plain: {
    "no-flame-in-the-room":
      "No flame, heater, hotplate or grinder in the room: the vapour creeps along the floor.",
    "warm-in-drawn-water": "Lid eased, below 50 °C, never in an oven, a microwave or on a hotplate.",
    "open-and-draw-away": "Draw the air away from your face.",
    "spray-needs-extraction": "Filtered extraction fit for flammable vapour, and a mask for mist and vapour.",
    "not-down-the-drain": "Liquid goes to the hazardous household collection; let residue harden first.",
    "rags-flat-and-apart": "Alcohol rags dry hard: hang them flat, apart, outdoors.",
    "oil-rags-heat":
      "Rags and pads with drying oil heat by themselves: flat outdoors, or in water in a lidded tin.",
  },
  more: "All that is known of it",
  estimate: "An estimate, not a clearance: the supplier’s safety data sheet and local codes come first.",
};
