import { z } from "zod";
import { DomainError } from "../domain-error.ts";
import { randomFromSeed } from "../random.ts";
import { readyTime, type WatchedJar } from "../statistics/times/ready-time.ts";
import { logRankPermutation } from "../statistics/verdict/log-rank-permutation.ts";
import { words } from "../statistics/verdict/three-words.ts";
import { usualMatters, verdictTimes } from "../statistics/verdict/verdict-times.ts";
import { defineCalculation } from "./calculation.ts";
import { type Flag, flag } from "./flag.ts";
import { permutation } from "./permutation.ts";

const hours = z.number().min(0).max(100_000);

const jar = z.strictObject({
  jar: z.string().min(1),
  group: z.string().min(1),
  /** The last look at which it was not ready; 0 when it was ready at the first look. */
  notYetH: hours,
  /** The first look at which it was ready; null when it never was. Equal to `notYetH` when it was seen turning ready. */
  doneByH: hours.nullable(),
});
type Jar = z.output<typeof jar>;

const input = z.strictObject({
  model: z.enum(["weibull", "lognormal"]),
  jars: z.array(jar).min(1).max(10_000),
  /** So many times as long would matter; a convention of Lacbench's own where it is not told. */
  matters: z.number().min(1.01).max(100).optional(),
  /** What dealings are drawn from where there are too many to try all; the same seed, the same answer. */
  seed: z.string().min(1).default("ready-time"),
});

const interval = z.tuple([z.number(), z.number().nullable()]);

const output = z.object({
  coefficients: z.array(z.object({ term: z.string(), estimate: z.number(), standardError: z.number() })),
  scale: z.number().nullable(),
  logLikelihood: z.number().nullable(),
  groups: z.array(
    z.object({
      group: z.string(),
      medianH: z.number().nullable(),
      /** 95 %; null above where the looks set no upper limit. */
      interval: interval.nullable(),
      /** One jar in ten is ready by then. */
      tenthH: z.number().nullable(),
    }),
  ),
  ratios: z.array(z.object({ of: z.string(), to: z.string(), ratio: z.number(), interval })),
  /** The same ratios with intervals that hold for all of them at once, and the word for each. */
  pairs: z.array(
    z.object({
      of: z.string(),
      to: z.string(),
      ratio: z.number(),
      interval,
      verdict: z.enum(words),
      directionSure: z.boolean(),
    }),
  ),
  matters: z.number(),
  /** Jars of each group that would settle what is unclear; null where no number up to 60 would. */
  moreNeeded: z.object({ jars: z.number().nullable() }),
  /** False when the looks do not fix the time of every group. */
  identifiable: z.boolean(),
  /** Whether groups differ at all, by a log-rank test that asks for no curve; null where looks set none apart. */
  permutation: permutation.nullable(),
  flags: z.array(flag),
});

function watchedJar({ notYetH, doneByH, group }: Jar, i: number): WatchedJar {
  if (doneByH !== null && !(doneByH >= notYetH && doneByH > 0))
    throw new DomainError({
      code: "out-of-range",
      field: `jars[${i}].doneByH`,
      value: doneByH,
      limits: { min: notYetH },
      because:
        doneByH === 0
          ? "A jar cannot be ready before it is mixed."
          : "A jar cannot be seen ready before it was last seen not ready.",
    });
  return { left: notYetH, right: doneByH, group };
}

const upTo = ([low, high]: readonly [number, number]): [number, number | null] => [
  low,
  Number.isFinite(high) ? high : null,
];

/** Jars watched alike give one line of advice each time the looks leave a group open. */
function openGroups(
  jars: readonly WatchedJar[],
  groups: readonly { group: string; median: number | null }[],
): Flag[] {
  return groups
    .filter((g) => g.median === null)
    .map(({ group }) => {
      const mine = jars.filter((j) => j.group === group);
      const message = mine.every((j) => j.right === null)
        ? `No jar of ${group} has been seen ready yet.`
        : mine.every((j) => j.left === 0)
          ? `Every jar of ${group} was ready at its first look: look earlier next time.`
          : `One time would suit every look at ${group}: looks closer together, or more jars, would fix it.`;
      return { code: "not-fixed", field: "jars", message };
    });
}

export const readyTimeCalculation = defineCalculation({
  name: "ready-time",
  purpose: "How long a jar takes to be ready, by group, from looks that were hours apart",
  input,
  output,
  run: ({ model, jars, seed, matters = usualMatters }) => {
    const watched = jars.map(watchedJar);
    const ready = readyTime(watched, model);
    const { fit, groups, ratios, identifiable } = ready;
    const said = verdictTimes(ready, watched, matters);
    return {
      coefficients: [...(fit?.coefficients ?? [])],
      scale: fit?.scale ?? null,
      logLikelihood: fit?.logLikelihood ?? null,
      groups: groups.map((g) => ({
        group: g.group,
        medianH: g.median,
        interval: g.interval === null ? null : upTo(g.interval),
        tenthH: g.tenth,
      })),
      ratios: ratios.map((r) => ({ ...r, interval: upTo(r.interval) })),
      pairs: said.pairs.map((p) => ({ ...p, interval: upTo(p.interval) })),
      matters,
      moreNeeded: { jars: said.moreJars },
      identifiable,
      permutation: logRankPermutation(watched, randomFromSeed(seed)),
      flags: openGroups(watched, groups),
    };
  },
  sources: [
    "J. D. Kalbfleisch and R. L. Prentice, The Statistical Analysis of Failure Time Data (2002), ch. 3: times known to lie between two looks",
    "D. M. Finkelstein, Biometrics 42 (1986) 845: the log-rank score of such times",
  ],
  example: {
    input: {
      model: "weibull",
      jars: [
        { jar: "e1", group: "ethanol", notYetH: 8, doneByH: 20 },
        { jar: "e2", group: "ethanol", notYetH: 20, doneByH: 26 },
        { jar: "e3", group: "ethanol", notYetH: 0, doneByH: 12 },
        { jar: "i1", group: "isopropanol", notYetH: 30, doneByH: 44 },
        { jar: "i2", group: "isopropanol", notYetH: 44, doneByH: 54 },
        { jar: "i3", group: "isopropanol", notYetH: 54, doneByH: null },
      ],
    },
    output: { identifiable: true },
  },
});
