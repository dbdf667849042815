import { type Finish, finishColour } from "../../core/colour/finish-colour.ts";
import { absorptionOfBlend, absorptionOfGrade } from "../../core/colour/resin-grades.ts";
import { hexFromSrgb } from "../../core/colour/srgb.ts";
import { metre } from "../../core/units.ts";
import type { JarView } from "../../core/views/jar.ts";
import type { DrawnJar } from "../drawings/jar.tsx";

/** What a jar's finish absorbs, resins in equal parts; undefined where no grade in it is one of the trade's. */
export function finishOfJar(jar: JarView): Finish | undefined {
  const parts = jar.grades.flatMap((grade) => {
    const absorption = absorptionOfGrade(grade);
    return absorption === undefined ? [] : [{ absorption, share: 1 }];
  });
  return parts.length === 0 || !jar.known
    ? undefined
    : { absorption: absorptionOfBlend(parts), solids: jar.solids };
}

/** Flakes are drawn as a thick jar of the same finish. */
const flakePath = 0.16;
/** A vessel whose size is not known is drawn as one that its first filling fills to this share. */
const usualFilling = 0.85;

export const capacityOf = (jar: JarView): number => jar.vessel?.capacity ?? jar.volumeAtFirst / usualFilling;

/** More than what clings to the glass: below a jug's own give or take a cut says nothing. */
export const isSomething = (jar: JarView): boolean => jar.volume.value > 2e-6;

/** The jar as it is drawn: level, colour, clarity, what lies in it. */
export function drawnJar(jar: JarView): DrawnJar {
  const finish = finishOfJar(jar);
  const look = jar.looks.looks.at(-1);
  const capacity = capacityOf(jar);
  return {
    share: capacity > 0 ? jar.volume.value / capacity : 0,
    fill: finish === undefined ? undefined : hexFromSrgb(finishColour(finish)),
    flake: finish === undefined ? undefined : hexFromSrgb(finishColour(finish, metre(flakePath))),
    undissolved: look?.undissolved,
    clarity: look?.clarity,
    wax: jar.wax === "settled",
    empty: jar.emptied !== null || !jar.known,
  };
}
