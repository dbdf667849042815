/** The core as an outsider imports it: `import { calculate } from "lacbench/core"`. The one barrel of the project. */

export { colourDifferenceCie76, colourDifferenceCie2000 } from "./colour/colour-difference.ts";
export { type Chromaticity, gardnerNumber } from "./colour/gardner.ts";
export { type Lab, labFromXyz, xyzFromLab } from "./colour/lab.ts";
export { hexFromSrgb, linearFromSrgb, type Srgb, srgb, srgbFromHex, srgbFromLinear } from "./colour/srgb.ts";
export { linearFromXyz, type Xyz, xyzFromLinear } from "./colour/xyz.ts";
export { layOut } from "./design/layout.ts";
export type { LaidPatch, Plan } from "./design/plan.ts";
export * from "./domain-error.ts";
export { dryFromMass, dryFromWet, filmAfterEachCoat, type Removal, volumeSolids } from "./film/film.ts";
export { type Random, randomFromSeed, randomIndex, randomNormal, shuffled } from "./random.ts";
export { calculationNamed, calculations } from "./registry/all.ts";
export { type Calculation, calculate } from "./registry/calculation.ts";
export type { Problem } from "./registry/problem.ts";
export type { Result } from "./result.ts";
export type { Component } from "./solution/component.ts";
export { type Composition, type Liquid, pouredTogether } from "./solution/composition.ts";
export { densityOfSolvent } from "./solution/density.ts";
export { cutFromDryDown, type DryDown } from "./solution/dry-down.ts";
export { type Mixed, type MixGiven, mixFrom, type Recipe } from "./solution/mix.ts";
export { blendOfResins, plainResin, type Resin, type ResinBlend } from "./solution/resin.ts";
export { cutOfSolution, type Solution, solutionOfCut } from "./solution/solution.ts";
export {
  massFractionFromUsProof,
  massFractionFromVolumeFraction,
  volumeFractionFromMassFraction,
} from "./solution/strength.ts";
export { type Thinned, thinTo } from "./solution/thin.ts";
export { fTails, fUpperQuantile } from "./statistics/distribution/f-distribution.ts";
export { studentTTails, studentTUpperQuantile } from "./statistics/distribution/student-t.ts";
export {
  studentizedRangeCdf,
  studentizedRangeQuantile,
} from "./statistics/distribution/studentized-range.ts";
export { friedmanTest } from "./statistics/ranks/friedman.ts";
export { type DifferenceForm, differenceEstimate } from "./statistics/senses/odd-one-out.ts";
export { fTestPower, smallestDifference } from "./statistics/several/power.ts";
export { tukeyDifference } from "./statistics/several/tukey.ts";
export { readyTime, type WatchedJar } from "./statistics/times/ready-time.ts";
export type { Reading } from "./statistics/verdict/readings.ts";
export { threeWords, type Word } from "./statistics/verdict/three-words.ts";
export { type Question, type Verdict, verdictMeasured } from "./statistics/verdict/verdict-measured.ts";
export { verdictOrdered } from "./statistics/verdict/verdict-ordered.ts";
export * from "./units.ts";
