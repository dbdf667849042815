import { describe, expect, test } from "vitest";
import { refusalOf } from "../../../test/refusal-of.ts";
import { allCodes } from "./arrange/codes.ts";
import { cannotTell } from "./foresight/cannot-tell.ts";
import { layOut } from "./layout.ts";
import type { Plan } from "./plan.ts";

const boards = (n: number, patches: number, wood = "cherry") =>
  Array.from({ length: n }, (_, i) => ({
    board: `${wood} ${i + 1}`,
    plank: `${wood} ${i + 1}`,
    wood,
    patches,
  }));

const plan = (over: Partial<Plan> = {}): Plan => ({
  factors: [{ name: "alcohol", levels: ["e", "i", "d"], appliedTo: "jar" }],
  jarsPerLevel: 1,
  boards: boards(2, 3),
  forbidden: [],
  neighboursForbidden: [],
  sessions: 2,
  ...over,
});

const refusal = (p: Plan) => refusalOf(() => layOut(p, "s"));

describe("layOut: what stands where", () => {
  test("each board holds every treatment when it can", () => {
    const laid = layOut(plan(), "s");
    for (const b of ["cherry 1", "cherry 2"])
      expect(
        laid
          .filter((p) => p.board === b)
          .map((p) => p.treatment.alcohol)
          .sort(),
      ).toEqual(["d", "e", "i"]);
  });

  test("same seed same layout, another seed another", () => {
    expect(layOut(plan(), "one")).toEqual(layOut(plan(), "one"));
    expect(layOut(plan(), "one")).not.toEqual(layOut(plan(), "two"));
  });

  test("the order of a session counts every patch once, board by board", () => {
    const laid = layOut(plan(), "s");
    for (const s of [0, 1]) {
      expect(laid.map((p) => p.order[s]).sort()).toEqual([1, 2, 3, 4, 5, 6]);
      const boardsInTurn = [...laid]
        .sort((a, b) => (a.order[s] ?? 0) - (b.order[s] ?? 0))
        .map((p) => p.board);
      expect(new Set(boardsInTurn.slice(0, 3)).size).toBe(1);
    }
  });

  test("second jars are used, and evenly", () => {
    const laid = layOut(plan({ jarsPerLevel: 2, boards: boards(4, 6) }), "s");
    const uses = new Map<string, number>();
    for (const p of laid) uses.set(p.jar, (uses.get(p.jar) ?? 0) + 1);
    expect([...uses.values()]).toEqual([4, 4, 4, 4, 4, 4]);
  });

  test("forbidden patterns stand nowhere and forbidden neighbours lie apart", () => {
    const p = plan({
      factors: [
        { name: "alcohol", levels: ["e", "i", "d"], appliedTo: "jar" },
        { name: "wood", levels: ["cherry", "ash"], appliedTo: "plank" },
      ],
      boards: [...boards(2, 6), ...boards(2, 6, "ash")],
      forbidden: [{ alcohol: "d", wood: "ash" }],
      neighboursForbidden: [[{ alcohol: "e" }, { alcohol: "e" }]],
    });
    for (let s = 0; s < 50; s++) {
      const laid = layOut(p, `s${s}`);
      expect(laid.some((x) => x.treatment.alcohol === "d" && x.treatment.wood === "ash")).toBe(false);
      for (const [i, x] of laid.entries()) {
        const next = laid[i + 1];
        if (next?.board === x.board)
          expect([x.treatment.alcohol, next.treatment.alcohol]).not.toEqual(["e", "e"]);
      }
    }
  });
});

describe("layOut: what is refused, by field and in words", () => {
  test.each([
    ["fewer places than treatments", plan({ boards: boards(1, 2) }), "boards", "only 2 places"],
    ["a jar that cannot be used", plan({ jarsPerLevel: 3 }), "jarsPerLevel", "cannot all be used"],
    ["more patches than codes", plan({ boards: boards(10, 20) }), "boards", "only 192 codes"],
    [
      "a wood that is not asked about",
      plan({ factors: [...plan().factors, { name: "wood", levels: ["ash"], appliedTo: "plank" }] }),
      "boards[0].wood",
      "does not ask about",
    ],
    ["all forbidden", plan({ forbidden: [{ wood: "cherry" }] }), "forbidden", "nothing that may stand"],
    [
      "neighbours that cannot be kept apart",
      plan({
        neighboursForbidden: [
          [{ alcohol: "e" }, { alcohol: "i" }],
          [{ alcohol: "e" }, { alcohol: "d" }],
        ],
      }),
      "neighboursForbidden",
      "keeps all forbidden neighbours apart",
    ],
    ["a board named twice", plan({ boards: [...boards(1, 3), ...boards(1, 3)] }), "boards", "Two boards"],
    ["a pattern of nothing", plan({ forbidden: [{}] }), "forbidden[0]", "names nothing"],
    ["an unknown level", plan({ forbidden: [{ alcohol: "x" }] }), "forbidden[0].alcohol", "No such level"],
  ])("%s", (_, p, field, words) => {
    const detail = refusal(p);
    expect(detail.field).toBe(field);
    expect(detail.because).toContain(words);
  });
});

/** Each count within five standard deviations of its binomial mean; all but never false for what is fair. */
const withinBinomial = (counts: Iterable<number>, draws: number, share: number): void => {
  for (const n of counts)
    expect(Math.abs(n - draws * share)).toBeLessThan(5 * Math.sqrt(draws * share * (1 - share)));
};
const count = (into: Map<string, number>, key: string) => into.set(key, (into.get(key) ?? 0) + 1);

test("over 10 000 draws every treatment stands at every place and turn, and code and jar number say nothing", () => {
  const draws = 10_000;
  const p = plan({ jarsPerLevel: 2 });
  const [places, turns, codes, jars] = [0, 1, 2, 3].map(() => new Map<string, number>()) as [
    Map<string, number>,
    Map<string, number>,
    Map<string, number>,
    Map<string, number>,
  ];
  for (let s = 0; s < draws; s++)
    for (const x of layOut(p, `draw ${s}`)) {
      count(places, `${x.board} ${x.place} ${x.treatment.alcohol}`);
      for (const [session, turn] of x.order.entries())
        count(turns, `${session} ${turn} ${x.treatment.alcohol}`);
      if (x.treatment.alcohol === "e") count(codes, x.code);
      count(jars, `${x.board} ${x.jar}`);
    }
  expect(places.size).toBe(2 * 3 * 3);
  withinBinomial(places.values(), draws, 1 / 3);
  expect(turns.size).toBe(2 * 6 * 3);
  withinBinomial(turns.values(), draws, 1 / 3);
  expect(codes.size).toBe(allCodes.length);
  withinBinomial(codes.values(), draws, 2 / allCodes.length);
  withinBinomial(jars.values(), draws, 1 / 2);
});

describe("cannotTell", () => {
  const wood = { name: "wood", levels: ["cherry", "ash"], appliedTo: "plank" } as const;
  const told = (p: Plan) => cannotTell(p, layOut(p, "s"));

  test("one jar for each alcohol is the alcohol; two jars part them", () => {
    expect(told(plan())).toEqual([{ term: "alcohol", with: ["jar"] }]);
    expect(told(plan({ jarsPerLevel: 2 }))).toEqual([]);
  });

  test("one plank for each wood is the wood, however many boards come of it", () => {
    const onePlank = (w: string) => boards(2, 6, w).map((b) => ({ ...b, plank: w }));
    const p = plan({ factors: [...plan().factors, wood], jarsPerLevel: 2 });
    expect(told({ ...p, boards: [...onePlank("cherry"), ...onePlank("ash")] })).toEqual([
      { term: "wood", with: ["plank"] },
    ]);
    expect(told({ ...p, boards: [...boards(2, 6), ...boards(2, 6, "ash")] })).toEqual([]);
  });

  test("two cuts let down from one stock of each alcohol do not repeat the alcohol", () => {
    const cut = { name: "cut", levels: ["1 lb", "1½ lb"], appliedTo: "jar" } as const;
    const p = plan({ factors: [...plan().factors, cut], boards: boards(2, 6) });
    expect(told(p)).toEqual([]);
    expect(told({ ...p, factors: [...plan().factors, { ...cut, fromOneStock: true }] })).toEqual([
      { term: "alcohol", with: ["jar"] },
    ]);
  });

  test("an alcohol kept to its own wood is the same thing as the wood", () => {
    const p = plan({
      factors: [{ name: "alcohol", levels: ["e", "i"], appliedTo: "jar" }, wood],
      jarsPerLevel: 2,
      boards: [...boards(2, 4), ...boards(2, 4, "ash")],
      forbidden: [
        { alcohol: "e", wood: "ash" },
        { alcohol: "i", wood: "cherry" },
      ],
    });
    expect(told(p)).toEqual([
      { term: "alcohol", with: ["wood"] },
      { term: "wood", with: ["alcohol"] },
    ]);
  });
});
