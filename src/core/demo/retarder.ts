import { layOut } from "../design/layout.ts";
import type { Plan } from "../design/plan.ts";
import { trialKeyText } from "../notebook/trial-key.ts";
import { type Jars, vessel } from "./jars.ts";
import { restorer, smoothLevels } from "./judging.ts";
import { laidOut } from "./laid-out.ts";
import { typed } from "./pen.ts";
import { hexOf, later, readAir, type Shop } from "./shop.ts";

const coats = 6;
const recipes = ["plain", "with n-propanol"] as const;
type Recipe = (typeof recipes)[number];

const plan: Plan = {
  factors: [{ name: "retarder", levels: [...recipes], appliedTo: "jar" }],
  jarsPerLevel: 2,
  boards: [3, 4].map((n) => ({ board: `birch ${n}`, plank: `birch plank ${n}`, wood: "birch", patches: 4 })),
  forbidden: [],
  neighboursForbidden: [],
  sessions: coats,
};

interface LetDown {
  readonly recipe: Recipe;
  readonly stock: number;
  readonly batch: string;
}

/** Last evening: of each 1 lb jar of ethanol a part let down with ethanol, and a part with as much n-propanol. */
function letDown(shop: Shop, jars: Jars): readonly LetDown[] {
  const { pen, clock, shelf } = shop;
  const weak = jars.working.filter((jar) => jar.alcohol === "ethanol" && jar.cut === "1 lb");
  return weak.flatMap((jar, i) =>
    recipes.map((recipe, r) => {
      const time = later("17:05", 6 * i + 3 * r);
      const code = `${recipe === "plain" ? "B" : "R"}${jar.stock}`;
      const glass = vessel(shop, clock.at(-1, time), `small jar ${code}`, 125);
      const added = recipe === "plain" ? shelf.alcohol.ethanol : shelf.retarder;
      const batch = pen.write(
        clock.at(-1, later(time, 2)),
        "batch-thinned",
        {
          code,
          vessel: glass,
          taken: typed("60 ml", "volume", shelf.jug),
          added: [{ material: added, amount: typed("6 ml", "volume", shelf.jug) }],
          aimedCutLbPerGal: 0.9,
        },
        { about: [jar.batch, glass, added] },
      );
      return { recipe, stock: jar.stock, batch };
    }),
  );
}

/** Last evening: two offcuts of the drawer fronts' birch, and the question. She is alone with it, so nothing is blind. */
function layDown(shop: Shop, jars: readonly LetDown[]) {
  const { pen, clock } = shop;
  const boards = plan.boards.map((b, i) =>
    pen.write(clock.at(-1, later("16:50", 3 * i)), "board-cut", {
      name: b.board,
      wood: b.wood,
      plank: b.plank,
      lengthMm: 480,
      widthMm: 120,
    }),
  );
  const trial = pen.write(clock.at(-1, "17:00"), "trial-asked", {
    question: "A tenth of n-propanol, so that the pad does not drag on the drawer fronts?",
    varies: [{ factor: "retarder", levels: [...recipes], appliedTo: "jar" }],
    held: [
      { what: "resin", at: "dewaxed lemon" },
      { what: "cut", at: "0.9 lb" },
      { what: "method", at: "pad" },
    ],
    looksAt: [
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
    evenings: 3,
    jarsPerLevel: 2,
    millilitresPerPatchCoat: 1.5,
  });
  const lot = hexOf(shop, 32);
  const patches = layOut(plan, lot);
  const keyText = trialKeyText(patches, lot, hexOf(shop, 32));
  pen.write(
    clock.at(-1, "18:59"),
    "trial-laid-out",
    {
      ...laidOut(
        plan,
        patches,
        (name) => boards[plan.boards.findIndex((b) => b.board === name)] as string,
        keyText,
      ),
      blinding: "none",
      geometry: { boardMm: [480, 120], patchMm: [110, 120], gutterMm: 10, judgedInsetMm: 15 },
      jars: jars.map((jar) => ({
        jar: `${jar.recipe} · jar ${jar.stock}`,
        recipe: { retarder: jar.recipe },
        batch: jar.batch,
      })),
    },
    { about: [trial, ...boards, ...jars.map((jar) => jar.batch)] },
  );
  pen.write(clock.at(-1, "19:00"), "key-opened", { key: keyText }, { about: [trial] });
  return { trial, boards, patches };
}

/** A trial that is still running: six padded coats on two offcuts, and last evening the first two of them. */
export function beginRetarderTrial(shop: Shop, jars: Jars): void {
  const { pen, clock } = shop;
  const small = letDown(shop, jars);
  const { trial, boards, patches } = layDown(shop, small);
  const sitting = pen.write(clock.at(-1, "19:01"), "sitting-begun", { who: [restorer], place: "shop" });
  readAir(shop, -1, "19:03");
  for (const [session, time] of ["19:05", "20:30"].entries())
    for (const [i, jar] of small.entries()) {
      const mine = patches.filter(
        (p) => p.treatment.retarder === jar.recipe && p.jar.endsWith(` ${jar.stock}`),
      );
      pen.write(
        clock.at(-1, later(time, 4 * i)),
        "layer-applied",
        {
          sort: "coat",
          targets: mine.map((p) => ({ trial, patch: p.patch })),
          from: [{ batch: jar.batch }],
          method: "pad",
          planned: { coat: session + 1 },
          went: "well",
        },
        { about: [trial, ...boards, jar.batch] },
      );
    }
  pen.write(clock.at(-1, "20:50"), "sitting-ended", { minutes: 110 }, { about: [sitting] });
}
