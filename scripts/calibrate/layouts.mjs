// Layouts drawn again and again: everything has to come at every place, every turn and under every code as often as the lot says.
import { allCodes } from "../../dist/core/design/arrange/codes.js";
import { layOut } from "../../dist/core/design/layout.js";

const boards = (n, patches) =>
  Array.from({ length: n }, (_, i) => ({ board: `b${i + 1}`, plank: `p${i + 1}`, wood: "cherry", patches }));
const factor = (name, count, appliedTo = "patch") => ({
  name,
  levels: Array.from({ length: count }, (_, i) => `${name} ${i + 1}`),
  appliedTo,
});
const plan = (kind, factors, where, more = {}) => ({
  kind,
  factors,
  jarsPerLevel: 1,
  boards: where,
  forbidden: [],
  neighboursForbidden: [],
  sessions: 2,
  ...more,
});
const five = [..."uvwxy"].map((name) => factor(name, 2));

const small = { board: "small", plank: "small", wood: "cherry", patches: 3 };
const moreOften = [{ what: { alcohol: "alcohol 1" }, times: 2 }];

/** How often a level comes among the patches. */
function shareOf({ moreOften: more = [] }, { name, levels }, level) {
  const weight = (one) => more.find(({ what }) => what[name] === one)?.times ?? 1;
  return weight(level) / levels.reduce((sum, one) => sum + weight(one), 0);
}

/** Each kind, with what is dealt in it where that is not everything. */
const plans = [
  // one board: nothing but the lot says what lies where
  ["one board", plan("every-board", [factor("alcohol", 3, "jar")], boards(1, 6))],
  ["every board", plan("every-board", [factor("alcohol", 3, "jar")], boards(2, 3), { jarsPerLevel: 2 })],
  ["even pairs", plan("even-pairs", [factor("alcohol", 7, "jar")], boards(7, 3))],
  ["square", plan("square", [factor("alcohol", 4, "jar")], boards(4, 4))],
  ["double square", plan("double-square", [factor("alcohol", 4, "jar")], boards(4, 4))],
  ["screen", plan("screen", five, boards(2, 4))],
  ["best", plan("best", [factor("alcohol", 3, "jar"), factor("method", 2)], boards(2, 4))],
  [
    "boards apart",
    plan("every-board", [factor("alcohol", 2, "jar"), factor("sealer", 2, "board")], boards(4, 2)),
  ],
  ["boards of two sizes", plan("every-board", [factor("alcohol", 3, "jar")], [...boards(1, 6), small])],
  ["a control twice", plan("every-board", [factor("alcohol", 4, "jar")], boards(2, 5), { moreOften })],
  // along a step board the place is the step: there only what changes from board to board is dealt
  [
    "step boards",
    plan("steps", [factor("alcohol", 2, "jar"), factor("coats", 3)], boards(4, 3)),
    ["alcohol"],
  ],
];

const add = (counts, key) => counts.set(key, (counts.get(key) ?? 0) + 1);

/** The counts' distances from what the lot says, in standard deviations of a binomial count. */
const distances = (counts, keys, runs, share) =>
  keys.map((key) => Math.abs((counts.get(key) ?? 0) - runs * share) / Math.sqrt(runs * share * (1 - share)));

function* figuresOf(name, given, runs, of) {
  const dealt = given.factors.filter((f) => of === undefined || of.includes(f.name));
  const [places, turns, codes] = [new Map(), new Map(), new Map()];
  for (let run = 0; run < runs; run++)
    for (const p of layOut(given, `${name} ${run}`))
      for (const f of dealt) {
        const level = p.treatment[f.name];
        add(places, `${p.board} ${p.place} ${level}`);
        for (const [session, turn] of p.order.entries()) add(turns, `${session} ${turn} ${level}`);
        if (level === f.levels[0]) add(codes, `${p.code} ${level}`);
      }
  const patches = given.boards.reduce((sum, b) => sum + b.patches, 0);
  const pairs = (where) =>
    dealt.flatMap((f) =>
      f.levels.flatMap((level) => where.map((at) => [`${at} ${level}`, shareOf(given, f, level)])),
    );
  const placed = pairs(
    given.boards.flatMap((b) => Array.from({ length: b.patches }, (_, i) => `${b.board} ${i + 1}`)),
  );
  const turned = pairs([0, 1].flatMap((s) => Array.from({ length: patches }, (_, i) => `${s} ${i + 1}`)));
  const coded = dealt.flatMap((f) =>
    allCodes.map((code) => [
      `${code} ${f.levels[0]}`,
      (patches * shareOf(given, f, f.levels[0])) / allCodes.length,
    ]),
  );
  for (const [what, counts, keys] of [
    ["at every place", places, placed],
    ["at every turn", turns, turned],
    ["under every code", codes, coded],
  ]) {
    const far = keys.flatMap(([key, share]) => distances(counts, [key], runs, share));
    yield {
      name: `${name}, ${runs} draws: ${far.length} counts ${what}, the farthest ${Math.max(...far).toFixed(1)} SD off; beyond 5 SD`,
      value: far.filter((d) => !(d <= 5)).length / far.length,
      atMost: 0,
    };
  }
}

/** One figure for places, turns and codes of each kind of layout. */
export function* figures(runs) {
  for (const [name, given, of] of plans) yield* figuresOf(name, given, runs, of);
}
