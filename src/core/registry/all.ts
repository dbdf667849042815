import { alcoholBlend, alcoholDensity, alcoholStrength } from "./alcohol.ts";
import { area } from "./area.ts";
import { blendJars } from "./blend-jars.ts";
import type { Calculation } from "./calculation.ts";
import { colourDifference } from "./colour.ts";
import { correctJar } from "./correct-jar.ts";
import { delivery } from "./delivery.ts";
import { layoutCalculation } from "./design.ts";
import { dewPointCalculation } from "./dew-point.ts";
import { dissolvingAlike } from "./dissolving-alike.ts";
import { dryDown } from "./dry-down.ts";
import { drying } from "./drying.ts";
import { filmBuild } from "./film.ts";
import { flashPointCalculation } from "./flash-point.ts";
import { mix } from "./mix.ts";
import { oddOneOutCalculation } from "./odd-one-out.ts";
import { piecePlan } from "./pieces.ts";
import { readyTimeCalculation } from "./ready-time.ts";
import { restore } from "./restore.ts";
import { schedule } from "./schedule.ts";
import { settlingCalculation } from "./settling.ts";
import { sideBySide } from "./side-by-side.ts";
import { thin } from "./thin.ts";
import { vapour } from "./vapour.ts";
import { verdictCalculation } from "./verdict.ts";
import { woodMoisture } from "./wood-moisture.ts";
import { workingCuts } from "./working-cuts.ts";

/** Every registered calculation, in the order in which the reference page lists them. */
export const calculations: readonly Calculation[] = [
  alcoholDensity,
  alcoholStrength,
  alcoholBlend,
  mix,
  thin,
  workingCuts,
  blendJars,
  correctJar,
  restore,
  dryDown,
  filmBuild,
  drying,
  dewPointCalculation,
  woodMoisture,
  vapour,
  flashPointCalculation,
  colourDifference,
  layoutCalculation,
  verdictCalculation,
  oddOneOutCalculation,
  sideBySide,
  readyTimeCalculation,
  settlingCalculation,
  dissolvingAlike,
  area,
  piecePlan,
  delivery,
  schedule,
];

export const calculationNamed = (name: string): Calculation | undefined =>
  calculations.find((c) => c.name === name);
