import type { Topic } from "./topic.ts";

type Part = () => Promise<{ readonly topic: Topic }>;

/**
 * What can be checked: for each topic the files that know how to compute it, each exporting `topic`. A topic that is
 * not here is read all the same, and all its cases count as not read.
 */
const topics: Readonly<Record<string, readonly Part[]>> = {
  anova: [() => import("./anova.ts")],
  calc: [() => import("./calc.ts")],
  colour: [() => import("./colour.ts")],
  design: [() => import("./design-power.ts"), () => import("./design-layouts.ts")],
  difference: [() => import("./difference.ts")],
  dissolution: [() => import("./dissolution.ts")],
  equivalence: [() => import("./equivalence.ts")],
  mixed: [() => import("./mixed.ts")],
  nonlinear: [() => import("./nonlinear.ts")],
  ordinal: [() => import("./ordinal.ts")],
  ranking: [() => import("./ranking.ts")],
  paired: [() => import("./paired.ts")],
  calendar: [() => import("./calendar.ts")],
  scheduling: [() => import("./scheduling.ts")],
  timetoevent: [() => import("./timetoevent.ts")],
  solutions: [
    () => import("./solutions-sources.ts"),
    () => import("./solutions-liquids.ts"),
    () => import("./solutions-air.ts"),
    () => import("./solutions-vapours.ts"),
  ],
  uncertainty: [() => import("./uncertainty.ts"), () => import("./uncertainty-type-a.ts")],
};

/** The parts of a topic as one. */
export async function loadTopic(name: string): Promise<Topic> {
  const parts = await Promise.all((topics[name] ?? []).map(async (load) => (await load()).topic));
  const wholeFile = parts.find((p) => p.wholeFile !== undefined)?.wholeFile;
  return {
    kinds: Object.assign({}, ...parts.map((p) => p.kinds)),
    instances: Object.assign({}, ...parts.map((p) => p.instances)),
    tables: Object.assign({}, ...parts.map((p) => p.tables)),
    sources: Object.assign({}, ...parts.map((p) => p.sources)),
    notCompared: parts.flatMap((p) => p.notCompared ?? []),
    ...(wholeFile === undefined ? {} : { wholeFile }),
    close: async () => {
      for (const part of parts) await part.close?.();
    },
  };
}
