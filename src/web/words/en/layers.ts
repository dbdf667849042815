import type { LayerAdvice, LayerNote, LayerOver, LayerUnder } from "../../../core/pieces/layers.ts";

const under: Record<LayerUnder, string> = {
  "bare wood": "Bare wood",
  "oily wood": "Bare wood of an oily kind (rosewood, teak)",
  "water stain": "Water stain",
  "spirit stain": "Spirit stain",
  "oil stain": "Oil stain",
  oil: "Oil (linseed, tung)",
  wax: "Wax",
  "old spirit varnish": "An old spirit varnish",
  "old oil varnish": "An old oil varnish",
  "old lacquer": "An old lacquer",
  "old polyurethane": "An old polyurethane",
  "old paint": "Old paint",
};

const over: Record<LayerOver, string> = {
  nothing: "Nothing",
  "more of the same": "More of the same, later",
  wax: "Wax",
  "oil varnish": "Oil varnish",
  polyurethane: "Polyurethane",
  waterborne: "A waterborne finish",
  lacquer: "Lacquer",
};

type Says = (layer: string, wait: string) => string;

const notes: Record<LayerNote, Says> = {
  holds: (layer) => `${layer} under: nothing stands in the way.`,
  "melts in": (layer) =>
    `${layer}: it melts into what is there and becomes one film. Put it on thin; fill a dent drop by drop, and let each drop dry.`,
  wait: (layer, wait) => `${layer}: wait ${wait} between the two, longer where it is cold.`,
  "wipe first": (layer) => `${layer} under: wipe it with a fast solvent just before the first coat.`,
  "clear first": (layer) =>
    `${layer} under: it will not stick. Clear it first with naphtha on clean cloths, again and again, and scuff.`,
  "clean first": (layer) => `${layer} under: take off wax, polish and grime with naphtha first.`,
  scuff: (layer) =>
    `${layer}: alcohol does not open it, so it holds by scratches alone. Scuff it dull all over.`,
  "drop test": (layer) =>
    `${layer} under: put a drop of alcohol where nobody looks. Soft in a minute: it will melt in. Hard: treat it as an oil varnish.`,
  "pulls colour": (layer) =>
    `${layer} under: alcohol pulls it. Spray the first coat, or lay it on once and do not go back.`,
  isolate: (layer) => `${layer} under: one or two thin coats of dewaxed flakes first, each left to dry.`,
  lead: (layer) =>
    `${layer} under: it may hold lead. Test it before any sanding; the rules for lead where you live come first.`,
  "dewaxed only": (layer) => `${layer} over: dewaxed flakes only.`,
  waxy: (layer) => `${layer} over: these flakes hold wax, and it will let go. Take dewaxed ones.`,
  "wax not told": (layer) =>
    `${layer} over: dewaxed flakes only, and the shelf does not say how much wax these hold.`,
  "thin only": (layer) => `${layer} over: a thin film only.`,
  "too thick": (layer) =>
    `${layer} over: this film is thick for that and may craze. One or two coats of 1 to 2 lb are usual.`,
  "last of all": () => "Wax goes on last of all: nothing sticks to it afterwards.",
  scrap: () => "Try the whole of it on a scrap of the same wood first.",
};

/** What lies under the finish and what goes over it. */
export const layers = {
  under: "What lies under it",
  over: "What goes over it",
  unders: under,
  overs: over,
  heading: "Where the layers meet",
  stops: "It will not hold like this",
  note: (advice: LayerAdvice, layer: string, wait: string) => notes[advice.note](layer, wait),
  source: "Waits and rules are common practice; the maker’s sheet for what goes over comes first.",
  lies: (under: string, over: string) => `Under it: ${under}. Over it: ${over}.`,
};
