import type { Body } from "../../../../core/notebook/kinds/all.ts";
import type { benchKinds } from "../../../../core/notebook/kinds/bench.ts";
import { also, list, type Naming, type Sayings } from "./naming.ts";

type Target = Body<"layer-applied">["targets"][number];
/** Where it was: codes where a trial's patches have them. */
function places(targets: readonly Target[], name: Naming): string {
  const said = targets.map(
    (t) => t.part ?? (t.patch === undefined ? name.of(t.board ?? t.piece) : name.of(`${t.trial}/${t.patch}`)),
  );
  return list([...new Set(said)]);
}
const sources = (from: Body<"layer-applied">["from"], name: Naming): string =>
  from.length === 0 ? "" : ` from ${list(from.map((f) => f.name ?? name.of(f.batch ?? f.material)))}`;

export const benchSayings: Sayings<keyof typeof benchKinds> = {
  "air-read": (b) =>
    `Air${also(" at ", b.place)}: ${b.temperature.typed}, ${b.relativeHumidity.typed}${also(", wood ", b.wood?.typed)}.`,
  "pad-made": (b) => `Pad made: ${b.name}.`,
  "pad-charged": (b, name) =>
    `${name.about} charged${also(" with ", b.amount?.typed)}${b.drops === undefined ? "" : `, ${b.drops} drops`}.`,
  "pad-rinsed": (b, name) => `${name.about} rinsed${also(" in ", b.with)}.`,
  "pad-retired": (_, name) => `${name.about} put away for good.`,
  "sitting-begun": (b) =>
    `Sitting begun${b.who === undefined || b.who.length === 0 ? "" : ` by ${list(b.who)}`}${also(", at ", b.place)}.`,
  "sitting-ended": (b) =>
    `Sitting ended${b.minutes === undefined ? "" : ` after ${Math.round(b.minutes)} minutes`}.`,
  "board-cut": (b) =>
    `Board ${b.name} cut: ${b.wood}, from plank ${b.plank}${b.lengthMm === undefined || b.widthMm === undefined ? "" : `, ${b.lengthMm} × ${b.widthMm} mm`}.`,
  "surface-worked": (b, name) =>
    `${places(b.targets, name)} ${b.how}${also(", with ", b.with)}${b.strokes === undefined ? "" : `, ${b.strokes} strokes`}${b.removedUm === undefined ? "" : `, about ${b.removedUm} µm off`}.`,
  "film-removed": (b, name) => `Film on ${places(b.targets, name)} ${b.how}${also(": ", b.note)}.`,
  "layer-applied": (b, name) => {
    const what = b.planned === undefined ? capital(b.sort) : `${capital(b.sort)} ${b.planned.coat}`;
    return `${what} on ${places(b.targets, name)}${sources(b.from, name)}, ${methods[b.method]}${also(", ", b.amount?.total.typed)}${b.oilDrops === undefined ? "" : `, ${b.oilDrops} drops of oil`}${b.went === undefined || b.went === "well" ? "" : `, ${b.went}`}${b.outsidePlan === undefined ? "" : `. Outside the plan: ${b.outsidePlan}`}.`;
  },
};

const methods = { pad: "padded", brush: "brushed", spray: "sprayed", wipe: "wiped", dip: "dipped" } as const;
const capital = (word: string): string => word.charAt(0).toUpperCase() + word.slice(1);
