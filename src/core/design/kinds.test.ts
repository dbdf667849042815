import { describe, expect, test } from "vitest";
import { refusalOf } from "../../../test/refusal-of.ts";
import { cannotTell } from "./foresight/cannot-tell.ts";
import { differenceCurve, worstFaultMended } from "./foresight/more-of-it.ts";
import { replicatesOf } from "./foresight/replicates.ts";
import { sameThings } from "./foresight/same-thing.ts";
import { smallestDifferences } from "./foresight/smallest-difference.ts";
import { stagesFor } from "./foresight/stages.ts";
import { layOut } from "./layout.ts";
import type { AppliedTo, Factor, LaidPatch, Plan } from "./plan.ts";

const boards = (n: number, patches: number) =>
  Array.from({ length: n }, (_, i) => ({ board: `b${i + 1}`, plank: `p${i + 1}`, wood: "cherry", patches }));
const factor = (name: string, levels: number, appliedTo: AppliedTo = "patch"): Factor => ({
  name,
  levels: Array.from({ length: levels }, (_, i) => `${name}${i + 1}`),
  appliedTo,
});
const plan = (over: Partial<Plan>): Plan => ({
  factors: [factor("alcohol", 4, "jar")],
  jarsPerLevel: 1,
  boards: boards(4, 4),
  forbidden: [],
  neighboursForbidden: [],
  sessions: 3,
  ...over,
});
const refusal = (p: Plan) => refusalOf(() => layOut(p, "s"));
const distinct = (patches: readonly LaidPatch[], key: (p: LaidPatch) => unknown) =>
  new Set(patches.map((p) => JSON.stringify(key(p)))).size;

describe("squares", () => {
  test("everything once on each board and once at each place, in each group of boards", () => {
    const laid = layOut(plan({ kind: "square", boards: boards(8, 4) }), "s");
    expect(distinct(laid, (p) => [p.board, p.treatment])).toBe(32);
    const counts = new Map<string, number>();
    for (const p of laid)
      counts.set(
        `${p.place} ${p.treatment.alcohol}`,
        (counts.get(`${p.place} ${p.treatment.alcohol}`) ?? 0) + 1,
      );
    expect([...counts.values()]).toEqual(Array(16).fill(2));
  });

  test("doubly: also once at each turn of every session, board by board", () => {
    const laid = layOut(plan({ kind: "double-square" }), "s");
    expect(distinct(laid, (p) => [p.place, p.treatment])).toBe(16);
    for (const s of [0, 1, 2])
      expect(distinct(laid, (p) => [((p.order[s] as number) - 1) % 4, p.treatment])).toBe(16);
  });

  test("two factors of five levels: each level of one meets each of the other once", () => {
    const laid = layOut(
      plan({
        kind: "double-square",
        factors: [factor("alcohol", 5, "jar"), factor("method", 5)],
        boards: boards(5, 5),
      }),
      "s",
    );
    expect(distinct(laid, (p) => p.treatment)).toBe(25);
    for (const name of ["alcohol", "method"]) {
      expect(distinct(laid, (p) => [p.board, p.treatment[name]])).toBe(25);
      expect(distinct(laid, (p) => [p.place, p.treatment[name]])).toBe(25);
    }
  });

  test("forbidden neighbours lie apart in a square too", () => {
    const laid = layOut(
      plan({ kind: "square", neighboursForbidden: [[{ alcohol: "alcohol1" }, { alcohol: "alcohol2" }]] }),
      "s",
    );
    for (const [i, p] of laid.entries()) {
      const before = laid[i - 1];
      if (before?.board === p.board)
        expect([before.treatment.alcohol, p.treatment.alcohol].sort()).not.toEqual(["alcohol1", "alcohol2"]);
    }
  });

  test.each([
    [
      "six by six, doubly",
      plan({ kind: "double-square", factors: [factor("alcohol", 6, "jar")], boards: boards(6, 6) }),
      "factors",
      "No Graeco-Latin square of 6 by 6",
    ],
    [
      "two by two, doubly",
      plan({ kind: "double-square", factors: [factor("alcohol", 2, "jar")], boards: boards(2, 2) }),
      "factors",
      "No Graeco-Latin square of 2 by 2",
    ],
    ["five boards for four", plan({ kind: "square", boards: boards(5, 4) }), "boards", "4, 8 or 12 would do"],
    [
      "boards too long",
      plan({ kind: "square", boards: boards(4, 5) }),
      "boards[0].patches",
      "every board needs 4 patches",
    ],
    [
      "something forbidden",
      plan({ kind: "square", forbidden: [{ alcohol: "alcohol1", board: "b1" }] }),
      "forbidden",
      "nothing can be left out",
    ],
    [
      "factors of unequal levels",
      plan({ kind: "double-square", factors: [factor("alcohol", 4, "jar"), factor("method", 3)] }),
      "factors",
      "equally many",
    ],
  ])("refused: %s", (_, p, field, words) => {
    expect(refusal(p).field).toBe(field);
    expect(refusal(p).because).toContain(words);
  });
});

describe("even pairs", () => {
  const pairs = (p: Plan) => {
    const met = new Map<string, number>();
    const laid = layOut(p, "s");
    for (const a of laid)
      for (const b of laid)
        if (a.board === b.board && (a.treatment.alcohol as string) < (b.treatment.alcohol as string)) {
          const key = `${a.treatment.alcohol} ${b.treatment.alcohol}`;
          met.set(key, (met.get(key) ?? 0) + 1);
        }
    return [...met.values()];
  };
  test("seven on seven boards of three: every pair once", () => {
    expect(
      pairs(plan({ kind: "even-pairs", factors: [factor("alcohol", 7, "jar")], boards: boards(7, 3) })),
    ).toEqual(Array(21).fill(1));
  });
  test("taken without being asked where the boards come to it", () => {
    expect(pairs(plan({ factors: [factor("alcohol", 9, "jar")], boards: boards(12, 3) }))).toEqual(
      Array(36).fill(1),
    );
  });
  test.each([
    [
      "boards that do not come to it",
      plan({ kind: "even-pairs", factors: [factor("alcohol", 7, "jar")], boards: boards(6, 3) }),
      "7 boards would do",
    ],
    [
      "boards of different size",
      plan({ kind: "even-pairs", boards: [...boards(2, 3), ...boards(3, 2).slice(2)] }),
      "boards of one size",
    ],
    [
      "what has been proved impossible",
      plan({ kind: "even-pairs", factors: [factor("alcohol", 15, "jar")], boards: boards(21, 5) }),
      "There can be no such plan",
    ],
    [
      "boards that hold everything",
      plan({ kind: "even-pairs", boards: boards(3, 5) }),
      "every board would do",
    ],
  ])("refused: %s", (_, p, words) => {
    expect(refusal(p).because).toContain(words);
  });
});

describe("screens", () => {
  const five = [..."uvwxy"].map((name) => factor(name, 2));
  test("five things in eight patches: each told, and what lies upon each other is said as the words say it", () => {
    const p = plan({ kind: "screen", factors: five, boards: boards(1, 8) });
    const laid = layOut(p, "s");
    for (const f of five) expect(laid.filter((x) => x.treatment[f.name] === `${f.name}1`)).toHaveLength(4);
    const mixed = sameThings(p, laid);
    // a 2^(5−2) of resolution 3 lays two single things upon pairs: NIST/SEMATECH e-Handbook, table 5.3.3.4.7
    expect(mixed.length).toBeGreaterThan(0);
    expect(mixed.every((m) => m.effect.length + Math.min(...m.with.map((w) => w.length)) >= 3)).toBe(true);
  });
  test("eleven in twelve patches over three boards: levels even on each board as far as they go", () => {
    const eleven = [..."abcdefghjkl"].map((name) => factor(name, 2));
    const laid = layOut(plan({ kind: "screen", factors: eleven, boards: boards(3, 4) }), "s");
    for (const f of eleven) expect(laid.filter((x) => x.treatment[f.name] === `${f.name}1`)).toHaveLength(6);
  });
  test.each([
    [
      "three levels",
      plan({ kind: "screen", factors: [...five, factor("z", 3)] }),
      "two that lie furthest apart",
    ],
    ["too few patches", plan({ kind: "screen", factors: five, boards: boards(1, 6) }), "8 patches at least"],
  ])("refused: %s", (_, p, words) => {
    expect(refusal(p).because).toContain(words);
  });
});

describe("the patches that tell most", () => {
  const p = plan({
    kind: "best",
    factors: [factor("alcohol", 3, "jar"), factor("cut", 3, "jar"), factor("method", 2)],
    boards: [...boards(2, 5), { board: "long", plank: "p3", wood: "cherry", patches: 7 }],
    forbidden: [{ alcohol: "alcohol1", method: "method2" }],
    neighboursForbidden: [[{ cut: "cut1" }, { cut: "cut1" }]],
  });
  test("on boards of different size, nothing forbidden, neighbours apart, everything told", () => {
    const laid = layOut(p, "s");
    expect(laid).toHaveLength(17);
    expect(laid.some((x) => x.treatment.alcohol === "alcohol1" && x.treatment.method === "method2")).toBe(
      false,
    );
    for (const [i, x] of laid.entries())
      if (laid[i - 1]?.board === x.board)
        expect([laid[i - 1]?.treatment.cut, x.treatment.cut]).not.toEqual(["cut1", "cut1"]);
    expect(cannotTell(p, laid).filter((c) => !c.with.includes("jar"))).toEqual([]);
  });
  test("fewer patches than things to find out are refused, with what they are", () => {
    const detail = refusal({ ...p, boards: boards(2, 3), together: [["alcohol", "cut"]] });
    expect(detail.because).toContain("There are 11 things to find out");
    expect(detail.because).toContain("alcohol and cut together");
  });
  test("asking a thing together with itself, or with nothing, is refused", () => {
    expect(refusal({ ...p, together: [["cut", "cut"]] }).field).toBe("together[0]");
    expect(refusal({ ...p, together: [["cut", "oil"]] }).code).toBe("unknown-name");
  });
});

describe("step boards", () => {
  const p = plan({
    kind: "steps",
    factors: [factor("alcohol", 2, "jar"), factor("coats", 4)],
    boards: boards(4, 4),
    jarsPerLevel: 2,
  });
  test("steps rise along each board, a board is of one jar, and each recipe has two jars", () => {
    const laid = layOut(p, "s");
    for (const b of p.boards) {
      const here = laid.filter((x) => x.board === b.board);
      expect(distinct(here, (x) => x.jar)).toBe(1);
      const steps = here.map((x) => Number(x.treatment.coats?.slice(-1)));
      expect([
        [1, 2, 3, 4],
        [4, 3, 2, 1],
      ]).toContainEqual(steps);
    }
    expect(distinct(laid, (x) => x.jar)).toBe(4);
    expect(cannotTell(p, laid)).toEqual([]);
    expect(cannotTell({ ...p, jarsPerLevel: 1 }, layOut({ ...p, jarsPerLevel: 1 }, "s"))).toEqual([
      { term: "alcohol", with: ["jar"] },
    ]);
  });
  test("boards with another number of patches are refused", () => {
    expect(refusal({ ...p, boards: boards(4, 3) }).because).toContain("every board needs 4 patches");
  });
});

describe("what stands more often", () => {
  const control = { what: { alcohol: "alcohol1" }, times: 2 };
  test("a control stands twice on every board that holds all of it, the rest once", () => {
    const laid = layOut(plan({ boards: boards(3, 5), moreOften: [control] }), "s");
    for (const { board } of boards(3, 5)) {
      const here = laid.filter((p) => p.board === board).map((p) => p.treatment.alcohol);
      expect([...here].sort()).toEqual(["alcohol1", "alcohol1", "alcohol2", "alcohol3", "alcohol4"]);
    }
  });
  test("it shows smaller differences from the control than among the rest (C. W. Dunnett, 1955)", () => {
    const of = (moreOften?: Plan["moreOften"]) => {
      const p = plan({ boards: boards(4, 5), ...(moreOften === undefined ? {} : { moreOften }) });
      const counts = layOut(p, "s").map((one) => one.treatment.alcohol);
      const n = (level: string) => counts.filter((one) => one === level).length;
      return 1 / n("alcohol1") + 1 / n("alcohol2");
    };
    expect(of([control])).toBeLessThan(of());
  });
  test("where everything has its place, and for what a board has whole, it is refused", () => {
    expect(refusal(plan({ kind: "square", moreOften: [control] })).field).toBe("moreOften");
    const whole = plan({ factors: [factor("alcohol", 2), factor("sealer", 2, "board")] });
    expect(refusal({ ...whole, moreOften: [{ what: { sealer: "sealer1" }, times: 2 }] }).field).toBe(
      "moreOften[0].what.sealer",
    );
    expect(refusal({ ...whole, moreOften: [{ what: { alcohol: "gin" }, times: 2 }] }).code).toBe(
      "unknown-name",
    );
    const small = plan({ boards: boards(1, 4), moreOften: [control] });
    expect(refusal(small)).toMatchObject({ code: "not-enough-data", limits: { min: 5 } });
  });
});

describe("before any wood is cut", () => {
  const noise = { patch: 3, jar: 2, plank: 2 };
  test("twenty patches from one jar are one jar", () => {
    const p = plan({ factors: [factor("alcohol", 2, "jar")], boards: boards(4, 10) });
    expect(replicatesOf(p, layOut(p, "s"))).toEqual([
      { factor: "alcohol", unit: "jar", times: 1, patches: 20 },
    ]);
  });
  test("a full grid mixes nothing up", () => {
    const p = plan({ factors: [factor("a", 2), factor("b", 3)], boards: boards(2, 6) });
    expect(sameThings(p, layOut(p, "s"))).toEqual([]);
  });
  test("more jars and more boards never show less", () => {
    const p = plan({ factors: [factor("alcohol", 2, "jar")], boards: boards(2, 6), jarsPerLevel: 2 });
    const points = differenceCurve(p, noise).filter((c) => c.jarsPerLevel > 1);
    const value = (jars: number, n: number) =>
      points.find((c) => c.jarsPerLevel === jars && c.boards === n)?.smallestDifference[0]?.value as number;
    expect(value(3, 2)).toBeLessThan(value(2, 2));
    expect(value(2, 4)).toBeLessThan(value(2, 2));
  });
  test("one jar of each is the worst fault, and a second jar mends it", () => {
    const p = plan({ factors: [factor("alcohol", 2, "jar")], boards: boards(2, 6) });
    const worst = worstFaultMended(p, layOut(p, "s"), noise, null);
    expect(worst?.fault).toEqual({ kind: "cannot-tell", factor: "alcohol", with: ["jar"] });
    expect(worst?.mend).toMatchObject({ change: "jars", jarsPerLevel: 2 });
  });
  test("too few boards are mended by the fewest more of each wood, from planks of their own", () => {
    const p = plan({ factors: [factor("method", 2)], boards: boards(2, 2) });
    const matters = 9;
    const worst = worstFaultMended(p, layOut(p, "s"), noise, matters);
    expect(worst?.fault).toMatchObject({ kind: "would-miss", factor: "method" });
    const more = worst?.mend?.boards ?? [];
    const shown = (n: number) => {
      const larger = { ...p, boards: more.slice(0, n) };
      return smallestDifferences(larger, layOut(larger, "s"), noise)[0]?.value ?? Number.POSITIVE_INFINITY;
    };
    expect(shown(more.length)).toBeLessThanOrEqual(matters);
    expect(shown(more.length - 1)).toBeGreaterThan(matters);
    expect(new Set(more.map((b) => b.board)).size).toBe(more.length);
  });
  test("where neither more jars nor more boards are enough, both are told", () => {
    const p = plan({ factors: [factor("alcohol", 2, "jar")], boards: boards(1, 8), jarsPerLevel: 2 });
    const assumed = { patch: 3, jar: 1, plank: 2 };
    const worst = worstFaultMended(p, layOut(p, "s"), assumed, 5);
    expect(worst?.mend?.change).toBe("jars and boards");
    const mended = { ...p, ...(worst?.mend ?? {}) };
    const [shown] = smallestDifferences(mended, layOut(mended, "s"), assumed);
    expect(shown?.value).toBeLessThanOrEqual(5);
  });
  test("a plan without a fault has none", () => {
    const p = plan({ factors: [factor("method", 2)], boards: boards(4, 6) });
    expect(worstFaultMended(p, layOut(p, "s"), noise, 20)).toBeNull();
  });
  test("a grid that is too large comes in two stages", () => {
    const p = plan({
      factors: [factor("a", 4), factor("b", 3), factor("c", 3), factor("d", 2)],
      boards: boards(3, 4),
    });
    expect(stagesFor(p)).toMatchObject([
      { stage: "screen", patches: 8, upTo: 4 },
      { stage: "refine", patches: 12, upTo: 2 },
    ]);
    expect(stagesFor(plan({}))).toBeNull();
  });
});
