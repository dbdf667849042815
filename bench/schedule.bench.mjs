// Published projects of 30 tasks to a proven optimum, beside a general-purpose solver that has a minute for each; then evenings:
// the demo trial, a late coat in it, and 2 000 tasks.
import { readFileSync } from "node:fs";
import { performance } from "node:perf_hooks";
import loadHighs from "highs";
import { calculationNamed } from "../dist/core/registry/all.js";
import { calculate } from "../dist/core/registry/calculation.js";
import { median, medianOf } from "./median.mjs";

const schedule = calculationNamed("schedule");
const cases = new URL("../test/check-values/trials/scheduling/psplib.json", import.meta.url);
const minute = 60;

function timed(given) {
  const begin = performance.now();
  const { value } = calculate(schedule, given);
  return { ms: performance.now() - begin, value };
}

/** A project by time: x = 1 where a task starts, and what runs at a time shares what there is. */
function projectAsMip({ duration, demand, capacity, successors }) {
  const horizon = duration.reduce((sum, d) => sum + d, 0);
  const times = Array.from({ length: horizon + 1 }, (_, t) => t);
  const last = duration.length - 1;
  const start = (i, sign) =>
    times
      .slice(1)
      .map((t) => `${sign} ${t} x${i}_${t}`)
      .join(" ");
  const rows = duration.map((_, i) => `${times.map((t) => `x${i}_${t}`).join(" + ")} = 1`);
  successors.forEach((list, i) => {
    for (const j of list) rows.push(`${start(j, "+")} ${start(i, "-")} >= ${duration[i]}`);
  });
  capacity.forEach((most, r) => {
    for (const t of times) {
      const running = duration.flatMap((d, i) =>
        demand[i][r] === 0
          ? []
          : times.slice(Math.max(0, t - d + 1), t + 1).map((s) => `${demand[i][r]} x${i}_${s}`),
      );
      if (running.length > 0) rows.push(`${running.join(" + ")} <= ${most}`);
    }
  });
  const names = duration.flatMap((_, i) => times.map((t) => `x${i}_${t}`));
  return `Minimize\n goal: ${start(last, "+")}\nSubject To\n${rows.map((row, k) => ` r${k}: ${row}`).join("\n")}\nBinary\n ${names.join(" ")}\nEnd\n`;
}

/** Milliseconds to a proven optimum; a minute where it was not proven by then. */
function peerTime(highs, project, optimum) {
  const begin = performance.now();
  const { Status, ObjectiveValue } = highs.solve(projectAsMip(project), { time_limit: minute });
  const isProven = Status === "Optimal" && Math.round(ObjectiveValue) === optimum;
  return isProven ? performance.now() - begin : 1000 * minute;
}

async function published() {
  const highs = await loadHighs();
  const { format, instances } = JSON.parse(readFileSync(cases, "utf8"));
  const small = instances.filter(({ duration }) => duration.length === 32);
  const runs = small.map((project) => {
    const { ms, value } = timed({ instance: { format, ...project }, limitMs: 120_000 });
    if (value.finish !== project.optimum || value.provenBest === null)
      throw new Error(
        `${project.name}: ${value.finish}, proven for ${value.provenBest}; ${project.optimum} is known`,
      );
    return { name: project.name, ms };
  });
  const slowest = runs.reduce((a, b) => (b.ms > a.ms ? b : a));
  const peer = small.map((project) => peerTime(highs, project, project.optimum));
  const each = runs.map(({ name, ms }, i) => ({
    name: `${name}, ${small[i].optimum} to the end`,
    value: ms,
    unit: "ms",
    peer: { name: peer[i] < 1000 * minute ? "HiGHS" : "HiGHS, stopped,", value: peer[i] },
  }));
  const many = `${small.length} projects of 30 tasks to proven optima`;
  return [
    ...each,
    {
      name: `${many}, median`,
      value: median(runs.map((run) => run.ms)),
      unit: "ms",
      atMost: 200,
      peer: { name: "HiGHS", value: median(peer) },
    },
    { name: `${many}, slowest (${slowest.name})`, value: slowest.ms, unit: "ms", atMost: 30_000 },
  ];
}

const day = (d) => new Date(Date.UTC(2026, 9, 5 + d)).toISOString().slice(0, 10);

/** Patches with coats that wait for each other 12 hours at least, on so many evenings of three hours. */
function trial(patches, coats, evenings, mostMinutes) {
  const all = Array.from({ length: patches * coats }, (_, i) => [Math.floor(i / coats), i % coats]);
  return {
    tasks: all.map(([p, c]) => ({ task: `p${p} c${c}`, minutes: 3 + (p % 3), hands: true })),
    waits: all
      .filter(([, c]) => c > 0)
      .map(([p, c]) => ({ from: `p${p} c${c - 1}`, to: `p${p} c${c}`, leastMinutes: 720, mostMinutes })),
    windows: Array.from({ length: evenings }, (_, d) => [`${day(d)}T18:00`, `${day(d)}T21:00`]),
    zone: "Europe/Berlin",
  };
}

/** Two evenings are done, and one coat of the second came at a quarter past eight the next morning. */
function late(given, { starts }) {
  const done = Object.fromEntries(Object.entries(starts).filter(([, at]) => at < day(2)));
  done["p7 c1"] = `${day(2)}T08:15`;
  return { ...given, replan: { starts, now: `${day(2)}T09:00`, done } };
}

const gap = ({ finish, lowerBound }) =>
  finish === lowerBound ? "proven" : `until ${finish}, not before ${lowerBound}`;

async function evenings() {
  const demo = trial(32, 6, 6, 2000);
  const { value } = timed(demo);
  const again = late(demo, value);
  const { moved, isFewestMoved } = timed(again).value;
  const many = trial(200, 10, 60, 3000);
  const large = timed(many);
  return [
    {
      name: `the demo trial, 32 patches of 6 coats (${gap(value)})`,
      value: await medianOf(5, () => timed(demo).ms),
      unit: "ms",
      atMost: 2000,
    },
    {
      name: `a late coat in it (${moved.length} moved, ${isFewestMoved ? "no fewer can" : "not proven"})`,
      value: await medianOf(5, () => timed(again).ms),
      unit: "ms",
      atMost: 300,
    },
    { name: `2 000 tasks (${gap(large.value)})`, value: large.ms, unit: "ms", atMost: 10_000 },
  ];
}

export const figures = async () => [...(await evenings()), ...(await published())];
