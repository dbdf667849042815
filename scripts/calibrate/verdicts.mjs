// Verdicts on layouts that the program itself draws (the registered `layout`), filled with readings from a known truth.
import { randomFromSeed, randomNormal } from "../../dist/core/random.js";
import { calculate } from "../../dist/core/registry/calculation.js";
import { layoutCalculation } from "../../dist/core/registry/design.js";
import { verdictMeasured } from "../../dist/core/statistics/verdict/verdict-measured.js";
import { verdictOrdered } from "../../dist/core/statistics/verdict/verdict-ordered.js";

const patchNoise = 1;
const boardNoise = 2;

/** A plan with one factor on jars, as the planning page would send it. */
const plan = (levels, jarsPerLevel, boards, patches) => ({
  factors: [{ name: "alcohol", levels, appliedTo: "jar" }],
  jarsPerLevel,
  boards: Array.from({ length: boards }, (_, b) => ({
    board: `b${b + 1}`,
    plank: `p${b + 1}`,
    wood: "cherry",
    patches,
  })),
  forbidden: [],
  neighboursForbidden: [],
  sessions: 1,
  noise: { patch: patchNoise, jar: 0.5, plank: boardNoise },
  seed: "calibrate",
});

/** Readings of a drawn layout: what each level truly does, each jar's and board's luck, each patch's noise. */
function filled(patches, world, random) {
  const luck = new Map();
  const lucky = (key, noise) => {
    if (!luck.has(key)) luck.set(key, noise * randomNormal(random));
    return luck.get(key);
  };
  const judges = Array.from({ length: world.judges ?? 1 }, (_, j) => `j${j}`);
  return patches.flatMap((p) => {
    if (random() < (world.lost ?? 0)) return [];
    const level = p.treatment.alcohol;
    const value =
      (world.truth[level] ?? 0) +
      lucky(`jar ${p.jar}`, world.jarNoise) +
      lucky(`board ${p.board}`, boardNoise) +
      patchNoise * randomNormal(random);
    return judges.map((judge) => ({
      patch: p.patch,
      jar: p.jar,
      plank: undefined,
      board: p.board,
      judge: world.judges === undefined ? undefined : judge,
      factors: { alcohol: level },
      value:
        world.judges === undefined
          ? value
          : value + lucky(judge, 1) + lucky(`${judge} ${level}`, world.taste) + 0.5 * randomNormal(random),
    }));
  });
}

const trueOf = (world, pair) => (world.truth[pair.a] ?? 0) - (world.truth[pair.b] ?? 0);

/** Of `runs` trials, the share in which `holds`; a trial that the verdict refuses is drawn again. */
function shareOf(runs, world, verdictOf, holds) {
  const random = randomFromSeed(JSON.stringify(world));
  const layout = calculate(layoutCalculation, world.plan);
  if (!layout.ok) throw new Error(layout.error.message);
  const { patches } = layout.value;
  let [held, made] = [0, 0];
  while (made < runs) {
    let verdict;
    try {
      verdict = verdictOf(filled(patches, world, random));
    } catch (error) {
      if (error.name !== "DomainError" || (world.lost ?? 0) === 0) throw error;
      continue;
    }
    made++;
    if (holds(verdict, world)) held++;
  }
  return held / runs;
}

const matters = 2;
const measured = (readings) => verdictMeasured(readings, { compare: "alcohol", appliedTo: "jar", matters });
const covered = (verdict, world) =>
  verdict.pairs.every((p) => p.interval[0] <= trueOf(world, p) && trueOf(world, p) <= p.interval[1]);
const anySaid = (word) => (verdict) => verdict.pairs.some((p) => p.verdict === word);

const alike = { e: 0, i: 0, p: 0 };
const two = { e: 0, p: 0 };
const balanced = [
  ["2 alcohols × 2 jars, 4 boards of 4", { plan: plan(["e", "p"], 2, 4, 4), truth: two, jarNoise: 0.5 }],
  [
    "3 alcohols × 2 jars, 6 boards of 6",
    { plan: plan(["e", "i", "p"], 2, 6, 6), truth: alike, jarNoise: 0.5 },
  ],
  ["3 alcohols × 3 jars, one glossier, 3 boards of 9", { plan: plan(["e", "i", "p"], 3, 3, 9), truth: { e: 0, i: 0, p: 6 }, jarNoise: 0.5 }], // biome-ignore format: one world a line
  [
    "2 alcohols × 4 jars, jars all alike, 4 boards of 8",
    { plan: plan(["e", "p"], 4, 4, 8), truth: two, jarNoise: 0 },
  ],
];
const unbalanced = [
  [
    "2 alcohols × 2 jars, one patch in seven lost",
    { plan: plan(["e", "p"], 2, 6, 4), truth: two, jarNoise: 0.5, lost: 0.15 },
  ],
  [
    "3 alcohols × 3 jars, one patch in five lost",
    { plan: plan(["e", "i", "p"], 3, 4, 9), truth: alike, jarNoise: 0.5, lost: 0.2 },
  ],
  ["2 alcohols × 3 jars on boards of 5", { plan: plan(["e", "p"], 3, 6, 5), truth: two, jarNoise: 0.5 }],
];
const judged = ["2 alcohols × 3 jars, 4 judges with tastes, some patches lost", { plan: plan(["e", "p"], 3, 3, 6), truth: two, jarNoise: 0.5, judges: 4, taste: 0.7, lost: 0.1 }]; // biome-ignore format: one world a line

/** The same readings with patches taken for what was made apart. */
const naive = (readings) =>
  verdictMeasured(
    readings.map((r) => ({ ...r, jar: undefined })),
    { compare: "alcohol", appliedTo: "patch", matters },
  );
const trap = { plan: plan(["e", "p"], 2, 6, 4), truth: two, jarNoise: 0.5 * patchNoise };

const five = (readings) =>
  readings.map((r) => ({ ...r, value: Math.max(0, Math.min(4, Math.round(r.value / 2 + 2))) }));
const ordered = (readings) =>
  verdictOrdered(five(readings), { compare: "alcohol", appliedTo: "jar", matters: 0.3 });

/** 95 ± 0.6 % of 10 000 runs is 2.75 standard errors either way; of fewer runs as many. */
const give = (runs) => 0.006 * Math.sqrt(10_000 / Math.min(runs, 10_000));
/** A limit on a rate of errors, with the same give where the rate lies at the limit. */
const upTo = (rate, runs) => rate + (2.75 * Math.sqrt(rate * (1 - rate))) / Math.sqrt(runs);

export async function* figures(runs) {
  for (const [name, world] of balanced)
    yield { name: `balanced, ${name}: all intervals cover`, value: shareOf(runs, world, measured, covered), atLeast: 0.95 - give(runs), atMost: 0.95 + give(runs) }; // biome-ignore format: a figure a line
  for (const [name, world] of unbalanced)
    yield {
      name: `unbalanced, ${name}: all intervals cover`,
      value: shareOf(runs, world, measured, covered),
      atLeast: 0.94,
      atMost: 0.98,
    };
  yield {
    name: `unbalanced, ${judged[0]}: the interval covers`,
    value: shareOf(runs, judged[1], measured, covered),
    atLeast: 0.94,
    atMost: 0.98,
  };
  const edge = { plan: plan(["e", "p"], 4, 4, 8), truth: { e: 0, p: matters }, jarNoise: 0.3 };
  yield {
    name: "as good as equal at a true difference of exactly what matters",
    value: shareOf(runs, edge, measured, anySaid("equal")),
    atMost: upTo(0.025, runs),
  };
  const same = { ...edge, truth: two };
  yield {
    name: "the same layout with nothing between them: as good as equal is said",
    value: shareOf(runs, same, measured, anySaid("equal")),
    atLeast: 0.5,
  };
  for (const [name, world] of [balanced[1], unbalanced[1]].filter((w) => w[1].truth === alike)) {
    const small = (readings) =>
      verdictMeasured(readings, { compare: "alcohol", appliedTo: "jar", matters: 0 });
    yield {
      name: `equal recipes, ${name}: any called different, though nothing is too small to matter`,
      value: shareOf(runs, world, small, anySaid("different")),
      atMost: upTo(0.05, runs),
    };
    yield {
      name: `equal recipes, ${name}: any called different`,
      value: shareOf(runs, world, measured, anySaid("different")),
      atMost: 0.05,
    };
  }
  for (const [name, world] of [
    ["one jar, 8 boards of 3", { plan: plan(["e", "i", "p"], 1, 8, 3), truth: alike, jarNoise: 0 }],
    ["2 jars, 8 boards of 6", { plan: plan(["e", "i", "p"], 2, 8, 6), truth: alike, jarNoise: 0.5 }],
  ])
    yield {
      name: `equal recipes on a scale of five steps, ${name}: any called different`,
      value: shareOf(runs, world, ordered, anySaid("different")),
      atMost: 0.05,
    };
  yield {
    name: "one-jar trap: patches taken for replicates cover",
    value: shareOf(runs, trap, naive, covered),
    atMost: 0.9,
  };
  yield {
    name: "one-jar trap: jars taken for replicates cover",
    value: shareOf(runs, trap, measured, covered),
    atLeast: 0.95 - give(runs),
    atMost: 0.95 + give(runs),
  };
}
