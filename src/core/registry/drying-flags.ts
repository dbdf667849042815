import { rayleighRange, reynoldsRange } from "../evaporation/air-side.ts";
import type { DryingRun, DryingSetup } from "../evaporation/drying.ts";
import { densityOfSolvent } from "../solution/density.ts";
import { strengthAt20C } from "../solution/strength.ts";
import { type Flag, flagsAbout } from "./flag.ts";
import { flagsOfVapour } from "./vapour-flags.ts";

const outOfCorrelation = (field: string, message: string): Flag => ({
  code: "outside-correlation",
  field,
  message,
});

function flagsOfAir(run: DryingRun): Flag[] {
  const { surface, start, temperature } = run.equations;
  const { reynolds } = surface.side;
  const rayleigh = surface.side.rayleigh(surface.densityRatio(start, temperature(start)));
  return [
    ...(reynolds > 0 && (reynolds < reynoldsRange.min || reynolds > reynoldsRange.max)
      ? [
          outOfCorrelation(
            "air.speedMS",
            "The draught lies outside its correlation; still air's own movement is what counts at so low a speed.",
          ),
        ]
      : []),
    ...(rayleigh < rayleighRange.min || rayleigh > rayleighRange.max
      ? [
          outOfCorrelation(
            "lengthM",
            "Still air over a surface of this size lies outside its correlation; its part is an estimate.",
          ),
        ]
      : []),
  ];
}

function flagsOfSetting({ touchDry, recoat, equations }: DryingRun, hours: number): Flag[] {
  const { resinVolume } = equations.surface.film;
  if (resinVolume === 0)
    return [
      {
        code: "no-resin",
        field: "film.cutLbPerGal",
        message: "Solvent alone leaves no film: it never sets, and nothing can turn white.",
      },
    ];
  const open = touchDry === null ? "touchDryMin" : recoat === null ? "recoatMin" : undefined;
  return open === undefined
    ? []
    : [{ code: "not-yet-dry", field: open, message: `It does not come to it in ${hours} hours.` }];
}

const fitted: Flag = {
  code: "fitted-to-practice",
  field: "touchDryMin",
  message:
    "How the resin holds what is left is fitted to practice: touch-dry may be off by a factor of 1.5, the wait for a coat by 3.",
};

const sinks: Flag = {
  code: "sinking-left-out",
  field: "film.beneathUm",
  message:
    "On bare wood some of a coat sinks in. That is left out: less lies on top than is reckoned, and when what sank in is dry is not known.",
};

/** What to know about a run: what lies outside a source's range, and what rests on practice. */
export function flagsOfDrying(setup: DryingSetup, run: DryingRun): Flag[] {
  const density = densityOfSolvent(setup.applied.composition, strengthAt20C);
  return [
    ...flagsAbout(density.flags, "film.solvent"),
    ...flagsOfVapour(run.equations.surface.method, "film.solvent"),
    ...flagsOfAir(run),
    ...flagsOfSetting(run, setup.seconds / 3600),
    ...(run.equations.surface.film.resinVolume > 0 ? [fitted] : []),
    ...(setup.wood !== null && (setup.applied.beneath ?? 0) === 0 ? [sinks] : []),
  ];
}
