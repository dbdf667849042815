import { chiSquareTails } from "../../core/statistics/distribution/chi-square.ts";
import { friedmanStatistic, friedmanTest, rankSumLsdIso8587 } from "../../core/statistics/ranks/friedman.ts";
import { friedmanExactUpper } from "../../core/statistics/ranks/friedman-exact.ts";
import { durbinTest, skillingsMackTest } from "../../core/statistics/ranks/incomplete-blocks.ts";
import {
  pageExactCritical,
  pageExactUpper,
  pageNullDistribution,
  pageTest,
} from "../../core/statistics/ranks/page.ts";
import { numberIn, perRow } from "./table.ts";
import { type Json, NotReadable, type Topic } from "./topic.ts";

type Cell = number | null;

function cellRows(given: Json): Cell[][] {
  const { rows } = given;
  const isCell = (x: unknown): x is Cell => x === null || typeof x === "number";
  if (!Array.isArray(rows) || !rows.every((row): row is Cell[] => Array.isArray(row) && row.every(isCell)))
    throw new NotReadable("rows is not a table of numbers");
  return rows;
}

function fullRows(given: Json): number[][] {
  const rows = cellRows(given);
  const full = rows.filter((row): row is number[] => row.every((x) => x !== null));
  if (full.length < rows.length) throw new NotReadable("a row has a gap");
  return full;
}

function friedman(given: Json) {
  const rows = fullRows(given);
  const test = friedmanTest(rows);
  return {
    rank_sums: test.rankSums,
    chisq: test.statistic,
    df: test.degreesOfFreedom,
    p: test.pValue,
    kendall_W: test.kendallW,
    uncorrected_chisq: test.uncorrected,
    F_conover: test.f.statistic,
    F_df1: test.f.degreesOfFreedom[0],
    F_df2: test.f.degreesOfFreedom[1],
    F_p: test.f.pValue,
    lsd_iso8587_05: rankSumLsdIso8587(rows.length, test.rankSums.length),
    lsd_conover_05: test.conoverLsd,
  };
}

function friedmanRankSums(given: Json) {
  const sums = Object.values(given.rank_sums as Record<string, number>);
  const blocks = Number(given.assessors);
  const chisq = friedmanStatistic(sums, blocks);
  return {
    chisq,
    df: sums.length - 1,
    p: chiSquareTails(chisq, sums.length - 1).upper,
    lsd_iso8587_05: rankSumLsdIso8587(blocks, sums.length),
  };
}

function page(given: Json) {
  const test = pageTest(fullRows(given));
  return {
    L: test.statistic,
    mean: test.mean,
    sd: test.standardDeviation,
    z: test.z,
    p_normal: test.pValueNormal,
    p_exact: test.pValueExact,
    chisq_page: test.z ** 2,
  };
}

function skillingsMack(given: Json) {
  const test = skillingsMackTest(cellRows(given));
  return { A: test.adjusted, T: test.statistic, df: test.degreesOfFreedom, p: test.pValue };
}

interface Judgement {
  readonly judge: unknown;
  readonly sample: unknown;
  readonly score: number;
}

function durbin(given: Json) {
  const long = given.long as readonly Judgement[];
  const unique = (key: "judge" | "sample"): string[] => [...new Set(long.map((x) => String(x[key])))];
  const samples = unique("sample").sort((a, b) => a.localeCompare(b, "en", { numeric: true }));
  const rows = unique("judge").map((judge) =>
    samples.map(
      (sample) => long.find((x) => String(x.judge) === judge && String(x.sample) === sample)?.score ?? null,
    ),
  );
  const test = durbinTest(rows);
  return {
    rank_sums: Object.fromEntries(samples.map((sample, j) => [sample, test.rankSums[j]])),
    t: samples.length,
    b: test.blocks,
    k: test.perBlock,
    r: test.replicates,
    D: test.statistic,
    df: test.degreesOfFreedom,
    p: test.pValue,
    F: test.f.statistic,
    F_df1: test.f.degreesOfFreedom[0],
    F_df2: test.f.degreesOfFreedom[1],
    F_p: test.f.pValue,
    lsd_05: test.lsd,
  };
}

export const topic: Topic = {
  kinds: {
    friedman,
    "friedman-rank-sums": friedmanRankSums,
    page,
    "skillings-mack": skillingsMack,
    durbin,
  },
  tables: {
    "friedman-exact-null.csv": perRow({
      inputs: ["k", "b", "S"],
      expected: { p_upper: ["rel", 1e-8] },
      compute: (row) => ({
        p_upper: friedmanExactUpper(numberIn(row, "k"), numberIn(row, "b"), numberIn(row, "S")),
      }),
    }),
    "page-exact-critical.csv": perRow({
      inputs: ["k", "b"],
      expected: {
        L05: ["exact", 0],
        L01: ["exact", 0],
        p_at_L05: ["rel", 1e-8],
        p_at_L01: ["rel", 1e-8],
      },
      compute: (row) => {
        const distribution = pageNullDistribution(numberIn(row, "k"), numberIn(row, "b"));
        const [L05, L01] = [pageExactCritical(distribution, 0.05), pageExactCritical(distribution, 0.01)];
        return {
          L05,
          L01,
          p_at_L05: pageExactUpper(distribution, L05),
          p_at_L01: pageExactUpper(distribution, L01),
        };
      },
    }),
  },
};
