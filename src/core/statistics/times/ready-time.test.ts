import { describe, expect, test } from "vitest";
import { checkTable } from "../../../../test/check-table.ts";
import { expectNear } from "../../../../test/near.ts";
import { DomainError } from "../../domain-error.ts";
import { randomFromSeed, randomNormal } from "../../random.ts";
import { errorDistributions, timeDistributions } from "../distribution/error-distribution.ts";
import { modelColumns } from "../model/model-matrix.ts";
import { cholesky } from "../numeric/cholesky.ts";
import { mean, squaredDeviations } from "../numeric/vector.ts";
import { fitAcceleratedTime } from "./accelerated-time.ts";
import { readyTime, type WatchedJar } from "./ready-time.ts";
import { hazardRatioEfron, kaplanMeierMedian, logRankTest, type WatchedTime } from "./right-censored.ts";
import { spanLikelihood, type TimeSpan } from "./span-likelihood.ts";
import { turnbull } from "./turnbull.ts";

const cosmesis: WatchedJar[] = checkTable("trials/timetoevent/data/cosmesis.csv").map((row) => ({
  left: Number(row.left),
  right: row.right === "" ? null : Number(row.right),
  group: row.treatment ?? "",
}));

describe("times between two looks (Finkelstein and Wolfe 1985, fitted by R's survreg)", () => {
  test.each([
    ["weibull", -143.32082711, 0.619339705211, -0.567550536563, 0.175729563322],
    ["lognormal", -146.622331968, 0.882141427852, -0.421000456374, 0.203190046899],
  ] as const)("%s", (model, logLikelihood, scale, coefficient, standardError) => {
    const { fit, ratios, identifiable } = readyTime(cosmesis, model);
    expectNear(fit?.logLikelihood ?? Number.NaN, logLikelihood, { absolute: 1e-7 });
    expectNear(fit?.scale ?? Number.NaN, scale, { relative: 1e-8 });
    expectNear(fit?.coefficients[1]?.estimate ?? Number.NaN, coefficient, { absolute: 1e-8 });
    expectNear(fit?.coefficients[1]?.standardError ?? Number.NaN, standardError, { relative: 1e-6 });
    expectNear(ratios[0]?.ratio ?? Number.NaN, Math.exp(coefficient), { relative: 1e-8 });
    expectNear(ratios[0]?.interval[0] ?? Number.NaN, Math.exp(coefficient - 1.959963985 * standardError), {
      relative: 1e-6,
    });
    expect(identifiable).toBe(true);
  });

  test("one group by itself: median 41.48 and tenth 7.734", () => {
    const [group] = readyTime(
      cosmesis.filter((j) => j.group === "Rad"),
      "weibull",
    ).groups;
    expectNear(group?.median ?? Number.NaN, 41.4811689462, { relative: 1e-7 });
    expectNear(group?.tenth ?? Number.NaN, 7.73414843131, { relative: 1e-7 });
  });
});

describe("what the looks do not fix", () => {
  const jar = (group: string, left: number, right: number | null): WatchedJar => ({ group, left, right });
  test.each<[string, WatchedJar[]]>([
    ["all ready at the first look", [jar("A", 0, 3), jar("A", 0, 5)]],
    ["none ready yet", [jar("A", 3, null), jar("A", 5, null)]],
    ["one time suits all", [jar("A", 1, 3), jar("A", 2, 5)]],
    ["one time suits each group", [jar("A", 1, 3), jar("B", 4, 5), jar("B", 3, 6)]],
    ["looks that only touch", [jar("A", 1, 3), jar("A", 3, 5)]],
    ["one jar", [jar("A", 4, 4)]],
  ])("%s", (_, jars) => {
    for (const model of ["weibull", "lognormal"] as const) {
      const found = readyTime(jars, model);
      expect(found).toMatchObject({ fit: null, identifiable: false, ratios: [] });
      expect(found.groups.every((g) => g.median === null && g.interval === null)).toBe(true);
    }
  });
  test("a group that is open leaves the others their times", () => {
    const jars = [jar("A", 1, 3), jar("A", 4, 5), jar("A", 2, 6), jar("B", 4, null)];
    const found = readyTime(jars, "weibull");
    expect(found.identifiable).toBe(false);
    expect(found.groups[0]?.median).toBeGreaterThan(2);
    expect(found.groups[1]).toEqual({ group: "B", median: null, interval: null, tenth: null });
  });
});

describe("properties of the fit", () => {
  test("in another unit of time every median is in that unit, and no ratio moves", () => {
    const days = cosmesis.map((j) => ({
      ...j,
      left: j.left / 24,
      right: j.right === null ? null : j.right / 24,
    }));
    const [hours, inDays] = [readyTime(cosmesis, "weibull"), readyTime(days, "weibull")];
    expectNear((inDays.groups[0]?.median ?? 0) * 24, hours.groups[0]?.median ?? Number.NaN, {
      relative: 1e-9,
    });
    expectNear(inDays.ratios[0]?.ratio ?? Number.NaN, hours.ratios[0]?.ratio ?? Number.NaN, {
      relative: 1e-9,
    });
  });

  test("a weight of three is three alike", () => {
    const columns = (n: number) => modelColumns([], { rows: n, factors: {} });
    const spans: TimeSpan[] = [
      { left: 2, right: 5 },
      { left: 6, right: 7 },
      { left: 4, right: null },
    ];
    const weighted = fitAcceleratedTime(
      spans.map((s) => ({ ...s, weight: 3 })),
      columns(3),
      "lognormal",
    );
    const repeated = fitAcceleratedTime([...spans, ...spans, ...spans], columns(9), "lognormal");
    expectNear(weighted.scale, repeated.scale, { relative: 1e-9 });
    expectNear(weighted.logLikelihood, repeated.logLikelihood, { relative: 1e-10 });
  });

  test("lognormal times seen exactly give the mean and deviation of their logarithms", () => {
    const times = [3, 4.5, 7, 11, 20];
    const logs = times.map(Math.log);
    const fit = fitAcceleratedTime(
      times.map((t) => ({ left: t, right: t })),
      modelColumns([], { rows: 5, factors: {} }),
      "lognormal",
    );
    expectNear(fit.coefficients[0]?.estimate ?? Number.NaN, mean(logs), { relative: 1e-10 });
    expectNear(fit.scale, Math.sqrt(squaredDeviations(logs) / 5), { relative: 1e-10 });
  });

  test.each(timeDistributions)("%s: slopes and curves agree with numeric differences", (name) => {
    const d = errorDistributions[name];
    const random = randomFromSeed(name);
    const spans: TimeSpan[] = [
      { left: 1, right: 2 },
      { left: 0, right: 1.5 },
      { left: 3, right: null },
      { left: 2.5, right: 2.5, weight: 2 },
      { left: 0.4, right: 9 },
    ];
    const rows = spans.map(() => [1, randomNormal(random)]);
    const at = d.fixedScale ? [0.3, -0.2] : [0.3, -0.2, 1.3];
    const surface = spanLikelihood(spans, rows, d);
    const here = surface(at);
    at.forEach((_, i) => {
      const moved = (by: number) => surface(at.map((v, j) => (i === j ? v + by : v)));
      const h = 1e-5;
      expectNear(here.gradient[i] ?? Number.NaN, (moved(h).log - moved(-h).log) / (2 * h), {
        absolute: 1e-7,
      });
      at.forEach((__, j) => {
        const slope = ((moved(h).gradient[j] ?? 0) - (moved(-h).gradient[j] ?? 0)) / (2 * h);
        expectNear(-(here.information[i]?.[j] ?? Number.NaN), slope, { absolute: 1e-6 });
      });
    });
  });

  test.each([
    [{ left: 5, right: 3 }],
    [{ left: -1, right: 3 }],
    [{ left: Number.NaN, right: 3 }],
    [{ left: 0, right: 0 }],
  ])("looks out of order are refused: %j", (span) => {
    const columns = modelColumns([], { rows: 1, factors: {} });
    expect(() => fitAcceleratedTime([span], columns, "weibull")).toThrow(DomainError);
  });
});

describe("without a curve", () => {
  test("Turnbull's shares of the breast cosmesis data as printed, to four places", () => {
    const rad = turnbull(cosmesis.filter((j) => j.group === "Rad"));
    const printed = [0.0463, 0.0334, 0.0887, 0.0708, 0.0926, 0.0818, 0.1209, 0.4656];
    expect(rad.intervals.length).toBe(printed.length);
    rad.intervals.forEach(({ mass }, i) => {
      expectNear(mass, printed[i] ?? Number.NaN, { absolute: 6e-5 });
    });
  });
  test("exact times are their own shares", () => {
    const found = turnbull([3, 3, 5, 8].map((t) => ({ left: t, right: t })));
    expect(found.intervals.map((i) => [i.left, i.right])).toEqual([
      [3, 3],
      [5, 5],
      [8, 8],
    ]);
    expectNear(found.intervals[0]?.mass ?? Number.NaN, 0.5, { absolute: 1e-9 });
  });
  test("a jar that is never ready keeps a share that is never closed", () => {
    const found = turnbull([
      { left: 1, right: 2 },
      { left: 4, right: null },
    ]);
    expect(found.intervals[1]).toMatchObject({ left: 4, right: null });
    expect(() => turnbull([])).toThrow(DomainError);
  });
});

describe("watched until the end (Miller 1997, leukaemia)", () => {
  const times: WatchedTime[] = checkTable("trials/timetoevent/data/aml.csv").map((row) => ({
    time: Number(row.time),
    event: row.status === "1",
    group: row.x ?? "",
  }));
  test("medians 31 and 23, log-rank 3.4", () => {
    const of = (group: string) => kaplanMeierMedian(times.filter((t) => t.group === group));
    expect(of("Maintained").median).toBe(31);
    expect(of("Nonmaintained").median).toBe(23);
    expectNear(logRankTest(times, ["Maintained", "Nonmaintained"]).statistic, 3.4, { absolute: 0.05 });
  });
  test("half lost at once, the rest never: the median is the middle of the level part", () => {
    const two = [
      { time: 4, event: true, group: "a" },
      { time: 10, event: true, group: "a" },
    ];
    expect(kaplanMeierMedian(two).median).toBe(7);
  });
  test("all events in one group have no ratio", () => {
    const one = times.map((t) => ({ ...t, event: t.event && t.group === "Maintained" }));
    expect(() => hazardRatioEfron(one, "Nonmaintained")).toThrow(DomainError);
  });
});

test("Cholesky solves what is positive definite and says when it is not", () => {
  const solver = cholesky([
    [4, 2],
    [2, 3],
  ]);
  const x = solver?.solve([2, 5]) ?? [];
  expectNear(x[0] ?? Number.NaN, -0.5, { absolute: 1e-12 });
  expectNear(x[1] ?? Number.NaN, 2, { absolute: 1e-12 });
  expect(
    cholesky([
      [1, 1],
      [1, 1],
    ]),
  ).toBeUndefined();
});
