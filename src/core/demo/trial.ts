import { layOut } from "../design/layout.ts";
import type { Plan } from "../design/plan.ts";
import type { Body } from "../notebook/kinds/all.ts";
import { trialKeyText } from "../notebook/trial-key.ts";
import type { Jars } from "./jars.ts";
import {
  coats,
  grainLevels,
  helper,
  judgeCured,
  judgeGrain,
  type Laid,
  restorer,
  smoothLevels,
} from "./judging.ts";
import { laidOut } from "./laid-out.ts";
import { typed } from "./pen.ts";
import { about, hexOf, later, readAir, type Shop } from "./shop.ts";
import { type DemoTruth, demoAlcohols, demoCuts, demoWoods, glossThatMatters } from "./truth.ts";

const asked: Body<"trial-asked"> = {
  question: "Which alcohol, and a 1 lb or a 1½ lb cut, for the library chairs?",
  varies: [
    { factor: "alcohol", levels: [...demoAlcohols], appliedTo: "jar" },
    { factor: "cut", levels: [...demoCuts], appliedTo: "jar", fromOneStock: true },
    { factor: "wood", levels: [...demoWoods], appliedTo: "plank" },
  ],
  held: [
    { what: "resin", at: "dewaxed lemon" },
    { what: "method", at: "two coats brushed, two padded" },
  ],
  looksAt: [
    {
      name: "gloss",
      scale: "measured",
      unit: "gloss units",
      matters: glossThatMatters,
      more: "glossier",
      less: "duller",
    },
    {
      name: "grain raise",
      scale: "ordered",
      levels: [...grainLevels],
      matters: 0.3,
      more: "more raised",
      less: "less raised",
    },
    {
      name: "smoothness",
      scale: "ordered",
      levels: [...smoothLevels],
      matters: 0.3,
      more: "smoother",
      less: "rougher",
    },
  ],
  coats,
  evenings: 4,
  jarsPerLevel: 2,
  millilitresPerPatchCoat: 2,
  daysToJudge: 28,
};

function planOf(): Plan {
  return {
    factors: [
      { name: "alcohol", levels: [...demoAlcohols], appliedTo: "jar" },
      { name: "cut", levels: [...demoCuts], appliedTo: "jar", fromOneStock: true },
      { name: "wood", levels: [...demoWoods], appliedTo: "plank" },
    ],
    jarsPerLevel: 2,
    boards: demoWoods.flatMap((wood) =>
      [1, 2].map((n) => ({ board: `${wood} ${n}`, plank: `${wood} plank ${n}`, wood, patches: 6 })),
    ),
    forbidden: [],
    neighboursForbidden: [],
    sessions: coats,
  };
}

/** Day −35: boards cut and sanded alike, the trial asked and laid out; the helper keeps the key. */
function layDown(shop: Shop, jars: Jars): Laid {
  const { pen, clock } = shop;
  const at = (time: string) => clock.at(-35, time);
  const plan = planOf();
  const boards = new Map(
    plan.boards.map((b, i) => [
      b.board,
      pen.write(at(later("16:00", 4 * i)), "board-cut", {
        name: b.board,
        wood: b.wood,
        plank: b.plank,
        lengthMm: 960,
        widthMm: 150,
      }),
    ]),
  );
  pen.write(
    at("17:20"),
    "surface-worked",
    { targets: [...boards.values()].map((board) => ({ board })), how: "sanded", with: "220", strokes: 40 },
    { about: [...boards.values()] },
  );
  const trial = pen.write(at("18:10"), "trial-asked", asked);
  const lot = hexOf(shop, 32);
  const patches = layOut(plan, lot);
  const keyText = trialKeyText(patches, lot, hexOf(shop, 32));
  const batches = jars.working.map((jar) => ({
    jar: `${jar.alcohol} · ${jar.cut} · jar ${jar.stock}`,
    recipe: { alcohol: jar.alcohol, cut: jar.cut },
    batch: jar.batch,
  }));
  pen.write(
    at("18:40"),
    "trial-laid-out",
    {
      ...laidOut(plan, patches, (name) => boards.get(name) as string, keyText),
      blinding: "helper holds the key",
      geometry: { boardMm: [960, 150], patchMm: [150, 150], gutterMm: 10, judgedInsetMm: 15 },
      jars: batches,
    },
    { about: [trial, ...boards.values(), ...batches.map((b) => b.batch)] },
  );
  return { trial, plan, patches, keyText };
}

/** Boards in the order in which a session comes to them. */
const boardsInOrder = (laid: Laid, session: number): readonly string[] =>
  [...laid.patches]
    .sort((a, b) => (a.order[session] as number) - (b.order[session] as number))
    .map((p) => p.board)
    .filter((board, i, all) => all.indexOf(board) === i);

const patchesOn = (laid: Laid, board: string) => laid.patches.filter((p) => p.board === board);

/** Days −34 to −31: a coat an evening on every board. */
function coat(shop: Shop, laid: Laid): void {
  const { pen, clock, random } = shop;
  for (let session = 0; session < coats; session++) {
    const day = -34 + session;
    const sitting = pen.write(clock.at(day, "18:00"), "sitting-begun", {
      who: [restorer, helper],
      place: "shop",
    });
    readAir(shop, day, "18:05");
    for (const [i, board] of boardsInOrder(laid, session).entries()) {
      const targets = patchesOn(laid, board).map((p) => ({ trial: laid.trial, patch: p.patch }));
      const time = later("18:15", 22 * i);
      if (session === 1)
        pen.write(
          clock.at(day, time),
          "surface-worked",
          { targets, how: "de-nibbed", with: "320", strokes: 8 },
          { about: [laid.trial] },
        );
      const grams = about(random, session === 0 ? 11.2 : 9.4, 0.4);
      pen.write(
        clock.at(day, later(time, 15)),
        "layer-applied",
        {
          sort: "coat",
          targets,
          from: [],
          method: session < 2 ? "brush" : "pad",
          amount: { by: "weighings", total: typed(`${grams.toFixed(1)} g`, "mass", shop.shelf.fineScale) },
          planned: { coat: session + 1 },
          went: "well",
        },
        { about: [laid.trial] },
      );
    }
    readAir(shop, day, "20:40");
    pen.write(clock.at(day, "21:00"), "sitting-ended", { minutes: 180 }, { about: [sitting] });
    if (session === 2)
      pen.write(clock.at(day, "20:50"), "happening", {
        what: "dust",
        note: "The door stood open while ash was sanded.",
      });
  }
}

/** The trial from question to opened key; returns its id. */
export function runTrial(shop: Shop, jars: Jars, truth: DemoTruth): string {
  const laid = layDown(shop, jars);
  coat(shop, { ...laid });
  judgeGrain(shop, laid);
  judgeCured(shop, laid, truth);
  shop.pen.write(shop.clock.at(-1, "17:30"), "key-opened", { key: laid.keyText }, { about: [laid.trial] });
  return laid.trial;
}
