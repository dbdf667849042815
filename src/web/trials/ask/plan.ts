import type { CurvePoint, Faulted } from "../../../core/design/foresight/more-of-it.ts";
import type { SameThing } from "../../../core/design/foresight/same-thing.ts";
import type { Noise, SmallestDifference } from "../../../core/design/foresight/smallest-difference.ts";
import { type Takes, trialTakes } from "../../../core/design/foresight/takes.ts";
import type { LaidPatch, Plan } from "../../../core/design/plan.ts";
import type { Body } from "../../../core/notebook/kinds/all.ts";
import { trialKeyText } from "../../../core/notebook/trial-key.ts";
import { sha256OfText } from "../../../core/notebook/withdrawal.ts";
import type { Asked } from "./draft.ts";

/** What the layout calculation gives. */
export interface Layout {
  readonly patches: readonly LaidPatch[];
  readonly cannotTell: readonly { readonly term: string; readonly with: readonly string[] }[];
  readonly smallestDifference: readonly SmallestDifference[];
  readonly sameThing: readonly SameThing[];
}

/** What a plan shows in one of the things looked at, and how that grows with jars and boards. */
export interface LookShown {
  readonly name: string;
  readonly smallestDifference: readonly SmallestDifference[];
  readonly curve: readonly CurvePoint[];
}

/** What takes as long as dozens of layouts: each thing looked at, and what would mend the worst of the plan. */
export interface Further {
  readonly responses: readonly LookShown[];
  readonly worst: (Faulted & { readonly response?: string }) | null;
}

/** Something looked at that is a number, with what is known of it. */
export interface MeasuredLook {
  readonly name: string;
  readonly unit: string;
  readonly matters: number;
}

export const measuredLooks = (asked: Asked | null): readonly MeasuredLook[] =>
  (asked?.body.looksAt ?? []).flatMap(({ name, scale, unit, matters }) =>
    scale === "measured" && matters !== undefined ? [{ name, unit: unit ?? "", matters }] : [],
  );

/** A trial as asked, as the layouts take it. */
export const planOf = (asked: Asked): Plan => ({
  kind: asked.kind,
  factors: asked.factors,
  jarsPerLevel: asked.jarsPerLevel,
  boards: asked.boards,
  forbidden: [],
  neighboursForbidden: asked.neighboursForbidden,
  ...(asked.moreOften.length === 0 ? {} : { moreOften: asked.moreOften }),
  sessions: asked.body.coats,
});

/** What goes into the layout calculation. */
export const layoutInput = (asked: Asked, seed: string, noise: Noise | undefined) => ({
  ...planOf(asked),
  seed,
  ...(noise === undefined ? {} : { noise }),
});

export const furtherInput = (asked: Asked, seed: string, noiseFor: (look: MeasuredLook) => Noise) => ({
  ...layoutInput(asked, seed, undefined),
  responses: measuredLooks(asked).map((look) => ({
    name: look.name,
    noise: noiseFor(look),
    matters: look.matters,
  })),
  curve: true,
});

/** Each jar that the layout takes from, in order of its name. */
export function jarsOf(
  asked: Asked,
  layout: Layout,
): readonly { readonly jar: string; readonly recipe: Readonly<Record<string, string>> }[] {
  const onJars = asked.factors.filter((f) => f.appliedTo === "jar").map((f) => f.name);
  const jars = new Map(
    layout.patches.map((p) => [
      p.jar,
      Object.fromEntries(onJars.map((name) => [name, p.treatment[name] as string])),
    ]),
  );
  return [...jars].sort(([a], [b]) => (a < b ? -1 : 1)).map(([jar, recipe]) => ({ jar, recipe }));
}

export const takesOf = (asked: Asked, layout: Layout): Takes =>
  trialTakes({
    patches: layout.patches.length,
    coats: asked.body.coats,
    responses: asked.body.looksAt.length,
    jars: jarsOf(asked, layout).length,
    millilitresPerPatchCoat: asked.body.millilitresPerPatchCoat ?? 0,
  });

/** Codes in the order of coating, for each session. */
const ordersOf = (patches: readonly LaidPatch[]): string[][] =>
  (patches[0]?.order ?? []).map((_, session) =>
    [...patches]
      .sort((a, b) => (a.order[session] as number) - (b.order[session] as number))
      .map((p) => p.code),
  );

/** What is written in clear of a layout, and the text of its key, which is not. */
export function layDown(
  asked: Asked,
  layout: Layout,
  secret: { readonly seed: string; readonly salt: string },
  chosen: {
    readonly blinding: Body<"trial-laid-out">["blinding"];
    readonly batches: Readonly<Record<string, string>>;
  },
): { readonly body: Body<"trial-laid-out">; readonly keyText: string } {
  const keyText = trialKeyText(layout.patches, secret.seed, secret.salt);
  const g = asked.geometry;
  return {
    keyText,
    body: {
      boards: asked.boards.map((b) => ({ name: b.board, plank: b.plank, wood: b.wood, patches: b.patches })),
      patches: layout.patches.map(({ patch, board, place, code }) => ({ patch, board, place, code })),
      orders: ordersOf(layout.patches),
      keySha256: sha256OfText(keyText),
      blinding: chosen.blinding,
      geometry: {
        boardMm: [g.lengthMm, g.widthMm],
        patchMm: [g.patchLengthMm, g.patchWidthMm],
        gutterMm: g.gutterMm,
        judgedInsetMm: g.judgedInsetMm,
      },
      cannotTell: layout.cannotTell.map((c) => ({ term: c.term, with: [...c.with] })),
      jars: jarsOf(asked, layout).map((j) => {
        const batch = chosen.batches[j.jar];
        return { ...j, ...(batch === undefined ? {} : { batch }) };
      }),
    },
  };
}
