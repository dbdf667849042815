import type { Body } from "../../../../core/notebook/kinds/all.ts";
import type { jarKinds } from "../../../../core/notebook/kinds/jars.ts";
import { also, list, type Naming, type Sayings } from "./naming.ts";

type Ingredient = Body<"batch-mixed">["solvents"][number];
const amountOf = (one: Ingredient, name: Naming): string =>
  `${one.amount.typed} ${one.name ?? name.of(one.material)}`.trim();
const amountsOf = (some: readonly Ingredient[], name: Naming): string =>
  list(some.map((one) => amountOf(one, name)));
const cut = (pounds: number | undefined): string =>
  pounds === undefined ? "" : `, to make a ${Number(pounds.toPrecision(3))} lb cut`;

export const jarSayings: Sayings<keyof typeof jarKinds> = {
  "vessel-described": (b) => `${b.name} is a vessel${also(" of ", b.capacity?.typed)}.`,
  "batch-mixed": (b, name) =>
    `Jar ${b.code} mixed: ${amountsOf(b.resins, name)} in ${amountsOf(b.solvents, name)}${
      b.additions === undefined || b.additions.length === 0 ? "" : `, with ${amountsOf(b.additions, name)}`
    }${cut(b.aimedCutLbPerGal)}.`,
  "batch-looked-at": (b, name) =>
    `${name.about} looked at: ${b.undissolved === "none" ? "all dissolved" : `${b.undissolved} undissolved`}${also(", about ", b.undissolvedShare?.typed)}${also(", ", b.clarity)}${also(", ", b.colour)}${b.waxSettled === true ? ", wax settled" : ""}.`,
  "batch-filtered": (b, name) =>
    b.code === undefined
      ? `${name.about} strained${also(" through ", b.through)}.`
      : `Jar ${b.code} strained from ${name.of(name.entry.about[0])}${also(" through ", b.through)}${also(", kept ", b.kept?.typed)}.`,
  "batch-thinned": (b, name) =>
    b.code === undefined
      ? `${name.about} thinned with ${amountsOf(b.added, name)}${cut(b.aimedCutLbPerGal)}.`
      : `Jar ${b.code} thinned from ${also("", b.taken?.typed)}${b.taken === undefined ? "" : " of "}${name.of(name.entry.about[0])} with ${amountsOf(b.added, name)}${cut(b.aimedCutLbPerGal)}.`,
  "batch-blended": (b, name) =>
    `Jar ${b.code} blended of ${list(b.parts.map((p) => `${p.amount.typed} of ${name.of(p.batch)}`))}.`,
  "batch-topped-up": (b, name) => `${name.about} topped up with ${amountsOf(b.added, name)}.`,
  "batch-decanted": (b, name) =>
    b.code === undefined
      ? `${b.amount.typed} poured off ${name.about}${also(" into ", b.to)}.`
      : `Jar ${b.code} poured off ${name.of(name.entry.about[0])}, ${b.amount.typed}.`,
  "leftovers-poured-back": (b, name) =>
    `Leftovers poured back into ${name.about}${also(", ", b.amount?.typed)}${also(", from ", b.from)}.`,
  "batch-contaminated": (b, name) => `${name.about} spoiled: ${b.with} got in.`,
  "batch-weighed": (b, name) =>
    `${name.about} weighed: ${b.gross.typed} ${b.withLid ? "with its lid" : "without its lid"}.`,
  "batch-drop-tested": (b, name) =>
    `${name.about}, drop on glass: ${b.result}${b.hardAfterMinutes === undefined ? "" : ` after ${b.hardAfterMinutes} min`}.`,
  "batch-dried-down": (b, name) => `${name.about} dried down: ${b.wet.typed} wet left ${b.dry.typed} dry.`,
  "batch-emptied": (b, name) => `${name.about} emptied${also(": ", b.why)}.`,
};
