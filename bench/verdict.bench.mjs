// A mixed model on the published split plot of 72 rows (oats, F. Yates 1935) beside lme4 in a warm R, and the verdicts of a large trial.
import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { Worker } from "node:worker_threads";
import { groupingOf } from "../dist/core/statistics/model/mixed-equations.js";
import { fitMixedModel } from "../dist/core/statistics/model/mixed-model.js";
import { modelColumns } from "../dist/core/statistics/model/model-matrix.js";
import { median, medianOf } from "./median.mjs";

const oats = fileURLToPath(new URL("../test/check-values/trials/mixed/data/oats.csv", import.meta.url));

const warmR = `
suppressMessages(library(lme4)); d <- read.csv("${oats}"); d$Block <- factor(d$Block); d$Variety <- factor(d$Variety)
fit <- function() lmer(yield ~ nitro + (1 | Block) + (1 | Block:Variety), data = d, REML = TRUE)
for (i in 1:20) f <- fit()
times <- sapply(1:50, function(i) system.time(fit(), gcFirst = FALSE)[["elapsed"]]); many <- system.time(for (i in 1:50) fit())[["elapsed"]] / 50
cat(many * 1000, fixef(f), sqrt(diag(as.matrix(vcov(f)))), -2 * as.numeric(logLik(f)), as.data.frame(VarCorr(f))$vcov)
`;

/** R with lme4, put there by apt where it is missing and may be; null where it cannot be had. */
function resultOfR() {
  const run = () => spawnSync("Rscript", ["-e", warmR], { encoding: "utf8" });
  let ended = run();
  if (ended.status !== 0 && process.getuid?.() === 0) {
    spawnSync("apt-get", ["install", "-y", "--no-install-recommends", "r-base-core", "r-cran-lme4"], {
      stdio: "ignore",
    });
    ended = run();
  }
  if (ended.status !== 0) return null;
  const [ms, ...numbers] = ended.stdout.trim().split(/\s+/).map(Number);
  return { ms, numbers };
}

function splitPlot() {
  const [, ...lines] = readFileSync(oats, "utf8").trim().split(/\r?\n/);
  const rows = lines.map((line) => line.split(","));
  const data = { rows: rows.length, factors: {}, numeric: { nitro: rows.map((r) => Number(r[2])) } };
  const yields = rows.map((r) => Number(r[3]));
  return () =>
    fitMixedModel(yields, modelColumns(["nitro"], data), [
      groupingOf("Block", rows.map((r) => r[0])), // biome-ignore format: one term a line
      groupingOf("Block:Variety", rows.map((r) => `${r[0]} ${r[1]}`)), // biome-ignore format: one term a line
    ]);
}

const timed = (work) => {
  const start = performance.now();
  work();
  return performance.now() - start;
};

/** The largest relative distance between our numbers and lme4's: coefficients, errors, −2 log-likelihood, variances. */
function distance(fit, theirs) {
  const ours = [
    ...fit.fixed.map((f) => f.estimate),
    ...fit.fixed.map((f) => f.standardError),
    fit.criterion,
    fit.variances[1].variance,
    fit.variances[0].variance,
    fit.residualVariance,
  ];
  return Math.max(...ours.map((v, i) => Math.abs(v - theirs[i]) / Math.abs(theirs[i])));
}

async function mixedFigures() {
  const fitted = splitPlot();
  for (let i = 0; i < 50; i++) fitted();
  const value = await medianOf(100, () => timed(fitted));
  const r = resultOfR();
  if (r === null) {
    console.log("R with lme4 is not here and cannot be put here: the mixed model stands without its peer.");
    return [{ name: "mixed model, 72 rows, median of 100", value, unit: "ms", atMost: 5 }];
  }
  return [
    {
      name: "mixed model, 72 rows, median of 100",
      value,
      unit: "ms",
      atMost: r.ms / 10,
      peer: { name: "lme4", value: r.ms },
    },
    {
      name: "its numbers against lme4's, the largest distance",
      value: distance(fitted(), r.numbers),
      unit: "relative",
      atMost: 1e-4,
    },
  ];
}

/** Verdicts of 200 patches × 5 responses, asked of a worker as the page asks them. */
function inWorker(input) {
  return new Promise((resolve, reject) => {
    const worker = new Worker(new URL("./verdict-worker.mjs", import.meta.url));
    worker.once("error", reject);
    const times = [];
    let sent = 0;
    const ask = () => {
      sent = performance.now();
      worker.postMessage(input);
    };
    worker.on("message", ({ ok }) => {
      if (!ok) reject(new Error("a verdict was refused"));
      times.push(performance.now() - sent);
      if (times.length < 21) ask();
      else void worker.terminate().then(() => resolve(times));
    });
    ask();
  });
}

export async function figures() {
  const mixed = await mixedFigures();
  const seeds = Array.from({ length: 5 }, (_, i) => ({
    seed: `response ${i}`,
    scale: i < 3 ? "measured" : "ordered",
  }));
  const times = await inWorker(seeds);
  return [
    ...mixed,
    { name: "200 patches × 5 responses in a worker, the first time", value: times[0], unit: "ms" },
    {
      name: "200 patches × 5 responses in a worker, median of 20 more",
      value: median(times.slice(1)),
      unit: "ms",
      atMost: 300,
    },
  ];
}
