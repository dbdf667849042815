// The interval-censored Weibull fit of the 94 published rows (breast cosmesis, Finkelstein 1986), beside R's survreg in a warm process.
import { readFileSync } from "node:fs";
import { modelColumns } from "../dist/core/statistics/model/model-matrix.js";
import { fitAcceleratedTime } from "../dist/core/statistics/times/accelerated-time.js";
import { medianOf } from "./median.mjs";
import { ensureR, numbersFromR } from "./rscript.mjs";

const path = new URL("../test/check-values/trials/timetoevent/data/cosmesis.csv", import.meta.url);
const [header, ...lines] = readFileSync(path, "utf8")
  .trim()
  .split("\n")
  .map((line) => line.split(","));
const column = (name) => lines.map((cells) => cells[header.indexOf(name)]);
const number = (text, none) => (text === "" || text === "NA" ? none : Number(text));
const [left, right, treatment] = ["left", "right", "treatment"].map(column);

const spans = left.map((text, i) => ({ left: number(text, 0), right: number(right[i], null) }));
const data = {
  rows: spans.length,
  factors: { treatment: { levels: ["Rad", "RadChem"], values: treatment } },
  numeric: {},
};

/** Times of 300 fits one after another, once it is warm, and the last one's figures. */
const rival = `
  library(survival)
  d <- read.csv("${path.pathname}")
  d$left[!is.na(d$left) & d$left == 0] <- NA
  fit <- function() survreg(Surv(left, right, type = "interval2") ~ treatment, data = d, dist = "weibull")
  for (i in 1:50) f <- fit()
  t <- replicate(300, { s <- Sys.time(); fit(); as.numeric(Sys.time() - s, units = "secs") })
  cat(sprintf("%.12g", c(1e3 * median(t), coef(f), f$scale)), "\\n")`;

export async function figures() {
  ensureR();
  const [milliseconds, ...theirs] = numbersFromR(rival);
  const columns = modelColumns(["treatment"], data);
  const fitted = () => fitAcceleratedTime(spans, columns, "weibull");
  const { coefficients, scale } = fitted();
  const ours = [coefficients[0].estimate, coefficients[1].estimate, scale];
  const apart = Math.max(...ours.map((x, i) => Math.abs(x - theirs[i])));
  for (let i = 0; i < 300; i++) fitted();
  const value = await medianOf(1000, () => {
    const start = performance.now();
    fitted();
    return performance.now() - start;
  });
  const peer = { name: "survreg", value: milliseconds };
  return [
    {
      name: `an interval-censored fit of ${spans.length} rows`,
      value,
      unit: "ms",
      atMost: milliseconds / 5,
      peer,
    },
    {
      name: "its coefficients and scale beside R's, the furthest apart",
      value: apart,
      unit: "",
      atMost: 1e-4,
    },
  ];
}
