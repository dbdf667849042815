import type { LaidPatch, Plan } from "../design/plan.ts";
import { randomNormal } from "../random.ts";
import { about, later, type Shop } from "./shop.ts";
import {
  type DemoAlcohol,
  type DemoTruth,
  demoAlcohols,
  demoCuts,
  demoGlossOfWood,
  demoNoise,
} from "./truth.ts";

export const coats = 4;
export const grainLevels = ["none", "slight", "plain", "strong"] as const;
export const smoothLevels = ["rough", "a few nibs", "smooth", "like glass"] as const;
export const restorer = "Ines";
export const helper = "Tomas";

/** The trial as it was laid down, with what only the holder of the key knows. */
export interface Laid {
  readonly trial: string;
  readonly plan: Plan;
  readonly patches: readonly LaidPatch[];
  readonly keyText: string;
}

/** The two stocks of each alcohol, a little above and below: always as much between stocks in all, never the same. */
function stockLuck(shop: Shop): ReadonlyMap<string, number> {
  const drawn = demoAlcohols.map(() => randomNormal(shop.random));
  const size = Math.hypot(...drawn) / Math.sqrt(demoAlcohols.length);
  return new Map(
    demoAlcohols.flatMap((alcohol, i) => {
      const luck = (demoNoise.stock * (drawn[i] as number)) / size / Math.SQRT2;
      return [
        [`${alcohol} 1`, luck],
        [`${alcohol} 2`, -luck],
      ] as const;
    }),
  );
}

/** What each patch's gloss really is. */
function glossOf(shop: Shop, laid: Laid, truth: DemoTruth): ReadonlyMap<string, number> {
  const luck = stockLuck(shop);
  const planks = new Map(laid.plan.boards.map((b) => [b.plank, about(shop.random, 0, demoNoise.plank)]));
  const board = new Map(laid.plan.boards.map((b) => [b.board, b]));
  return new Map(
    laid.patches.map((p) => {
      const { plank = "", wood = "" } = board.get(p.board) ?? {};
      const alcohol = p.treatment.alcohol as DemoAlcohol;
      const mean =
        (demoGlossOfWood[wood] ?? 0) +
        (planks.get(plank) ?? 0) +
        truth.gloss[alcohol] +
        (p.treatment.cut === demoCuts[1] ? truth.glossOfStrongerCut : 0) +
        (luck.get(`${alcohol} ${p.jar.at(-1)}`) ?? 0);
      return [p.patch, about(shop.random, mean, demoNoise.patch)];
    }),
  );
}

const levelAt = <T>(levels: readonly T[], latent: number): T =>
  levels[Math.max(0, Math.min(levels.length - 1, Math.round(latent)))] as T;

const shuffledPatches = (shop: Shop, laid: Laid): readonly LaidPatch[] =>
  [...laid.patches]
    .map((patch) => ({ patch, key: shop.random() }))
    .sort((a, b) => a.key - b.key)
    .map(({ patch }) => patch);

/** Day −33, before the second coat: how far the grain rose, by fingertip. */
export function judgeGrain(shop: Shop, laid: Laid): void {
  const wood = new Map(laid.plan.boards.map((b) => [b.board, b.wood]));
  for (const [i, p] of shuffledPatches(shop, laid).entries()) {
    const latent = about(shop.random, wood.get(p.board) === "ash" ? 1.9 : 1.1, 0.6);
    shop.pen.write(
      shop.clock.at(-33, later("16:50", i)),
      "judged",
      {
        patch: p.patch,
        response: "grain raise",
        level: levelAt(grainLevels, latent),
        who: restorer,
        light: "by fingertip",
        seen: "code",
        order: i + 1,
        afterCoat: 1,
      },
      { about: [laid.trial] },
    );
  }
}

/** Days −3 and −2: gloss measured twice on every patch; smoothness judged once. */
export function judgeCured(shop: Shop, laid: Laid, truth: DemoTruth): void {
  const gloss = glossOf(shop, laid, truth);
  for (const occasion of [1, 2])
    for (const [i, p] of shuffledPatches(shop, laid).entries()) {
      const value = about(shop.random, gloss.get(p.patch) ?? 0, demoNoise.reading);
      const day = occasion - 4;
      shop.pen.write(
        shop.clock.at(day, later("10:00", 1.5 * i)),
        "measured",
        {
          patch: p.patch,
          response: "gloss",
          value: {
            typed: value.toFixed(1),
            unit: "gloss units",
            si: Number(value.toFixed(1)),
            instrument: shop.shelf.glossMeter,
          },
          who: restorer,
          seen: "code",
          order: i + 1,
          occasion,
          afterCoat: coats,
        },
        { about: [laid.trial, shop.shelf.glossMeter] },
      );
    }
  for (const [i, p] of shuffledPatches(shop, laid).entries()) {
    const latent = about(shop.random, p.treatment.cut === demoCuts[1] ? 2.2 : 1.8, 0.7);
    shop.pen.write(
      shop.clock.at(-2, later("14:00", i)),
      "judged",
      {
        patch: p.patch,
        response: "smoothness",
        level: levelAt(smoothLevels, latent),
        who: helper,
        light: "north window, raking",
        seen: "code",
        order: i + 1,
        afterCoat: coats,
      },
      { about: [laid.trial] },
    );
  }
}
