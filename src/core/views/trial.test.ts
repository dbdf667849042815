import { beforeEach, describe, expect, test } from "vitest";
import { Pen } from "../demo/pen.ts";
import { layOut } from "../design/layout.ts";
import type { Plan } from "../design/plan.ts";
import type { NotebookEntry } from "../notebook/entry.ts";
import type { Body, Kind } from "../notebook/kinds/all.ts";
import { trialKeyText } from "../notebook/trial-key.ts";
import { sha256OfText } from "../notebook/withdrawal.ts";
import { strikesToCorrect } from "../notebook/write-entry.ts";
import { trialIds, trialView } from "./trial.ts";
import { blindingHad, coatsRead, trialRows } from "./trial-rows.ts";

/** A notebook that writes at a given hour of one October day. */
function desk() {
  const pen = new Pen("trial tests", "Europe/Berlin", "Ada");
  const write = <K extends Kind>(
    hour: number,
    kind: K,
    body: Body<K>,
    about: readonly string[] = [],
    strikes: readonly string[] = [],
  ) => {
    pen.write(`2026-10-05T${String(hour).padStart(2, "0")}:00:00.000Z`, kind, body, { about, strikes });
    return pen.entries.at(-1)?.entry as NotebookEntry; // just written
  };
  return { notebook: pen.book, write, pen };
}

const plan: Plan = {
  factors: [
    { name: "alcohol", levels: ["e", "i"], appliedTo: "jar" },
    { name: "cut", levels: ["1 lb", "2 lb"], appliedTo: "jar", fromOneStock: true },
  ],
  jarsPerLevel: 1,
  boards: [1, 2].map((n) => ({ board: `b${n}`, plank: `p${n}`, wood: "ash", patches: 4 })),
  forbidden: [],
  neighboursForbidden: [],
  sessions: 2,
};
const laid = layOut(plan, "f".repeat(32));
const keyText = trialKeyText(laid, "f".repeat(32), "0123456789abcdef0123456789abcdef");

function asked(coats = 2): Body<"trial-asked"> {
  return {
    question: "Which alcohol?",
    varies: plan.factors.map((f) => ({
      factor: f.name,
      levels: [...f.levels],
      appliedTo: f.appliedTo,
      ...(f.fromOneStock === true ? { fromOneStock: true } : {}),
    })),
    looksAt: [{ name: "gloss", scale: "measured", unit: "gloss units", matters: 5 }],
    coats,
  };
}
const layout = (): Body<"trial-laid-out"> => ({
  boards: plan.boards.map((b) => ({ name: b.board, plank: b.plank, wood: b.wood, patches: b.patches })),
  patches: laid.map(({ patch, board, place, code }) => ({ patch, board, place, code })),
  orders: [0, 1].map((s) =>
    [...laid].sort((a, b) => (a.order[s] as number) - (b.order[s] as number)).map((p) => p.code),
  ),
  keySha256: sha256OfText(keyText),
  blinding: "codes only",
});

let d: ReturnType<typeof desk>;
let trial: string;
beforeEach(() => {
  d = desk();
  trial = d.write(8, "trial-asked", asked()).id;
});
const view = () => {
  const seen = trialView(d.notebook, trial);
  if (seen === null) throw new Error("no trial");
  return seen;
};
const coat = (hour: number, n: number, patches = laid.map((p) => p.patch), from: { batch: string }[] = []) =>
  d.write(
    hour,
    "layer-applied",
    {
      sort: "coat",
      targets: patches.map((patch) => ({ trial, patch })),
      from,
      method: "brush",
      planned: { coat: n },
    },
    [trial],
  );
const measure = (hour: number, patch: string, value: number, more: Partial<Body<"measured">> = {}) =>
  d.write(
    hour,
    "measured",
    { patch, response: "gloss", value: { typed: `${value}`, unit: "gloss units", si: value }, ...more },
    [trial],
  );

describe("a trial as its entries tell it", () => {
  test("asked, laid out, coating, judging, closed", () => {
    expect(view().state).toBe("asked");
    d.write(9, "trial-laid-out", layout(), [trial]);
    expect(view()).toMatchObject({ state: "laid out", key: { state: "elsewhere" }, coatsDone: 0 });
    coat(10, 1);
    expect(view()).toMatchObject({ state: "coating", coatsDone: 1 });
    coat(12, 2);
    expect(view().state).toBe("judging");
    d.write(18, "trial-closed", {}, [trial]);
    expect(view().state).toBe("closed");
  });

  test("a correction of the question is still the same trial", () => {
    const first = d.notebook.making(trial);
    if (first === undefined) throw new Error("no trial");
    d.write(9, "trial-asked", asked(3), [trial], strikesToCorrect(first));
    expect(trialIds(d.notebook)).toEqual([trial]);
    expect(view().asked.coats).toBe(3);
  });

  test("no age is reckoned from a coat that is only remembered", () => {
    d.write(9, "trial-laid-out", layout(), [trial]);
    coat(10, 1);
    const patch = laid[0]?.patch ?? "";
    measure(22, patch, 41);
    expect(view().readings[0]?.daysSinceLayer).toBeCloseTo(0.5, 9);
    const first = d.notebook.touching(trial).find((entry) => entry.kind === "layer-applied");
    if (first === undefined) throw new Error("no coat");
    const roughly = { about: [trial], strikes: strikesToCorrect(first), remembered: true } as const;
    d.pen.write(first.happened, "layer-applied", first.body as Body<"layer-applied">, roughly);
    expect(view().readings[0]).toMatchObject({ afterCoat: 1, daysSinceLayer: null });
  });

  test("turns are counted on each board", () => {
    d.write(9, "trial-laid-out", layout(), [trial]);
    for (const board of ["b1", "b2"])
      for (const session of [0, 1])
        expect(
          view()
            .patches.filter((p) => p.board === board)
            .map((p) => p.turns[session])
            .sort(),
        ).toEqual([1, 2, 3, 4]);
  });

  test("a struck coat was not given; a patch left out does not hold up the others and may come back", () => {
    d.write(9, "trial-laid-out", layout(), [trial]);
    const first = coat(10, 1);
    coat(
      11,
      2,
      laid.slice(1).map((p) => p.patch),
    );
    expect(view().coatsDone).toBe(1);
    const patch = laid[0]?.patch as string;
    d.write(12, "patch-left-out", { patch, why: "dropped", keyOpen: false }, [trial]);
    expect(view()).toMatchObject({ coatsDone: 2, state: "judging" });
    d.write(13, "patch-brought-back", { patch, keyOpen: false }, [trial]);
    expect(view().coatsDone).toBe(1);
    d.write(14, "struck", {}, [trial], [first.id]);
    expect(view().coatsDone).toBe(0);
  });

  test("a key that does not hash to what was laid down opens nothing", () => {
    d.write(9, "trial-laid-out", layout(), [trial]);
    d.write(10, "key-opened", { key: keyText.replace("0123", "4567") }, [trial]);
    expect(view().key.state).toBe("wrong");
    expect(view().patches.every((p) => p.treatment === null)).toBe(true);
  });
});

describe("rows for a verdict", () => {
  beforeEach(() => {
    d.write(9, "trial-laid-out", layout(), [trial]);
    coat(10, 1);
    coat(12, 2);
    for (const [i, p] of laid.entries()) measure(14, p.patch, 40 + i);
  });
  const open = () => d.write(15, "key-opened", { key: keyText }, [trial]);
  const rows = (how: "as laid out" | "as treated" = "as laid out", compare = "alcohol") =>
    trialRows(view(), "gloss", compare, 2, how);

  test("none while the key is shut; each with the treatment of its code once it is open", () => {
    expect(rows()).toEqual([]);
    open();
    expect(rows().map((r) => [r.patch, r.factors, r.value])).toEqual(
      laid.map((p, i) => [p.patch, p.treatment, 40 + i]),
    );
    expect(rows()[0]).toMatchObject({
      block: "b1",
      plank: "p1",
      judge: "Ada",
      occasion: 1,
      daysSinceCoat: 2 / 24,
    });
    expect(coatsRead(view(), "gloss")).toEqual([2]);
  });

  test("two cuts of one stock are one mixing of the alcohol, and two of the cut", () => {
    open();
    expect(new Set(rows().map((r) => r.jar)).size).toBe(2);
    expect(new Set(rows("as laid out", "cut").map((r) => r.jar)).size).toBe(4);
  });

  test("left out before the key was opened: gone. After it: only from the analysis as treated", () => {
    d.write(14, "patch-left-out", { patch: laid[0]?.patch as string, why: "spoiled", keyOpen: false }, [
      trial,
    ]);
    open();
    expect(rows()).toHaveLength(7);
    d.write(16, "patch-left-out", { patch: laid[1]?.patch as string, why: "spoiled", keyOpen: true }, [
      trial,
    ]);
    expect(rows()).toHaveLength(7);
    expect(rows("as treated")).toHaveLength(6);
  });

  test("a coat too many departs from the layout", () => {
    coat(13, 3, [laid[2]?.patch as string]);
    open();
    expect(view().patches[2]?.departures).toHaveLength(1);
    expect(rows("as treated").some((r) => r.patch === laid[2]?.patch)).toBe(false);
  });

  test("blinding had: readings taken after the key was opened knew the recipe", () => {
    expect(blindingHad(view())).toEqual({
      had: "codes only",
      planned: "codes only",
      knowing: 0,
      readings: 8,
      laidDownFirst: true,
    });
    open();
    measure(16, laid[0]?.patch as string, 41, { occasion: 2 });
    expect(blindingHad(view())).toMatchObject({ had: "codes only", knowing: 1, readings: 9 });
  });
});
