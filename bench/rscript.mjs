import { execFileSync, spawnSync } from "node:child_process";

const has = () => spawnSync("Rscript", ["-e", "library(survival)"], { stdio: "ignore" }).status === 0;

/** R with its survival package, taken in through apt where it is missing: for a bench's rival, never for a test. */
export function ensureR() {
  if (has()) return;
  const packages = ["r-base-core", "r-cran-survival"];
  execFileSync("apt-get", ["install", "-y", "--no-install-recommends", ...packages], { stdio: "ignore" });
  if (!has()) throw new Error("Rscript with the package survival is needed, and apt-get did not bring it.");
}

/** Runs an R script that prints one line of numbers. */
export const numbersFromR = (script) =>
  execFileSync("Rscript", ["--vanilla", "-e", script], { encoding: "utf8" }).trim().split(/\s+/).map(Number);
