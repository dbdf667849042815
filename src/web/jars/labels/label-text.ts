import { massOf, solidsOf, solventVolumeOf } from "../../../core/jar/amounts.ts";
import { fitnessDefaults } from "../../../core/jar/fitness.ts";
import { whatTheLabelHides } from "../../../core/safety/cautions.ts";
import type { Component } from "../../../core/solution/component.ts";
import { type Cut, poundsPerUsGallonFromCut } from "../../../core/units.ts";
import type { JarView } from "../../../core/views/jar.ts";
import { withDigits } from "../../words/number.ts";
import { dayInWords } from "../../words/time.ts";
import * as words from "../../words/words.ts";
import { grams, millilitres, poundsText } from "../jar-text.ts";

/** What stands on a jar's label. */
export interface LabelText {
  readonly code: string;
  readonly cut: string;
  /** The same by the litre: grams of dry resin to a litre of alcohol. */
  readonly cutDefined: string;
  readonly resin: string;
  readonly solvent: string;
  readonly rows: readonly { readonly name: string; readonly says: string }[];
  readonly warning: string;
}

const dayMs = 86_400_000;
const addDays = (at: string, days: number): string => new Date(Date.parse(at) + days * dayMs).toISOString();

const labelCut = (jar: JarView): Cut | null =>
  jar.stage === "thinned" && jar.labelCut !== null ? jar.labelCut : (jar.cut?.value ?? null);

/** The pound's fraction for a working cut; for any other as exactly as it is worth saying. */
const pounds = (jar: JarView, cut: Cut): string =>
  jar.stage === "thinned" && jar.labelCut !== null
    ? poundsText(cut)
    : withDigits(poundsPerUsGallonFromCut(cut), 2);

/** What is in the liquid beside its main alcohol, water last. */
const shares = (jar: JarView): string => {
  const parts = (Object.entries(jar.composition) as [Component, number][])
    .filter(([, share]) => share >= 0.005)
    .sort((a, b) => b[1] - a[1])
    .slice(1);
  return [...parts.filter(([c]) => c !== "water"), ...parts.filter(([c]) => c === "water")]
    .map(([component, share]) =>
      words.jars.share(component, withDigits(share * 100, share < 0.01 ? 1 : 2).replace(/\.0$/, "")),
    )
    .join(", ");
};

/** Methanol, ketones and what is not named are said before the fire that every label speaks of. */
function warningOf(jar: JarView): string {
  const t = words.jars.labelText;
  const liquid = (Object.entries(jar.cautioned) as [Component, number][]).map(
    ([component, massFraction]) => ({
      component,
      massFraction,
    }),
  );
  const hidden = whatTheLabelHides(liquid).map((one) => t.hidden[one.code]);
  return [...new Set(hidden), t.warning].join(" ");
}

/**
 * A jar's label. Dates are days in `zone`.
 *
 * @param jar        the jar
 * @param testAfter  days after which it is to be tested, as this notebook has it
 */
export function labelText(jar: JarView, zone: string, testAfter: number): LabelText {
  const t = words.jars.labelText;
  const day = (at: string) => dayInWords(at, zone, jar.madeAt).replace(/^\w+ /, "");
  const cut = labelCut(jar);
  const atFirst = jar.steps[0]?.after.value ?? {};
  const rows = [
    {
      name: t.from,
      says: jar.lineage.length === 0 ? t.flakes : jar.lineage.map((one) => one.code).join(" ‹ "),
    },
    { name: t.made[jar.made], says: day(jar.madeAt) },
    ...(jar.resinSince === null || day(jar.resinSince) === day(jar.madeAt)
      ? []
      : [{ name: t.oldAs, says: day(jar.resinSince) }]),
    {
      name: t.inIt,
      says: t.resinAndAlcohol(grams(solidsOf(atFirst)), millilitres(solventVolumeOf(atFirst))),
    },
    { name: t.filled, says: `${millilitres(jar.volumeAtFirst)}, ${grams(massOf(atFirst))}` },
    ...(jar.weighedLast?.withLid === true
      ? [{ name: t.shutAt, says: t.withLid(grams(jar.weighedLast.grossKg)) }]
      : []),
    { name: t.testBy, says: day(addDays(jar.resinSince ?? jar.madeAt, testAfter)) },
  ];
  const others = shares(jar);
  const solvent = jar.solvents.map((named) => named.name).join(", ");
  return {
    code: jar.code,
    cut: cut === null ? "?" : pounds(jar, cut),
    cutDefined: cut === null ? t.cutUnknown : t.cutDefined(Math.round(cut)),
    resin: [jar.resins.map((named) => named.name).join(" and "), jar.wax === "waxy" ? t.waxy : ""]
      .filter((part) => part !== "")
      .join(", "),
    solvent: others === "" ? solvent : t.byWeight(solvent, others),
    rows,
    warning: warningOf(jar),
  };
}

export const testAfterDefault = fitnessDefaults.testAfterDays;

/** Text broken into lines of at most so many letters, at spaces; a word longer than a line stands alone. */
export function brokenInto(text: string, letters: number, lines: number): readonly string[] {
  const broken: string[] = [];
  for (const word of text.split(" ")) {
    const last = broken.at(-1);
    if (last !== undefined && `${last} ${word}`.length <= letters)
      broken[broken.length - 1] = `${last} ${word}`;
    else broken.push(word);
  }
  if (broken.length <= lines) return broken;
  const kept = broken.slice(0, lines);
  return [...kept.slice(0, -1), `${(kept.at(-1) ?? "").slice(0, letters - 1)}…`];
}
