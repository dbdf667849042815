// Agendas drawn by lot, each as the planner is asked and as the independent check reads it. Times are minutes from the first window.
import { randomFromSeed, randomIndex } from "../../dist/core/random.js";

const begin = Date.UTC(2026, 9, 5, 18, 0);
export const clockOf = (minute) => new Date(begin + minute * 60_000).toISOString().slice(0, 16);
export const minuteOf = (clock) => (Date.parse(`${clock}Z`) - begin) / 60_000;

const alone = ["set-ups", "rounds", "drying places", "nights"];
/** What each kind of agenda has. */
const features = {
  plain: [],
  "set-ups": ["set-ups"],
  rounds: ["rounds"],
  "drying places": ["drying places"],
  nights: ["nights"],
  "two people": ["people"],
  everything: alone,
  "people with set-ups": ["people", "set-ups"],
  "people with everything": ["people", ...alone],
};
export const kinds = Object.keys(features);

/** Changes that no detour shortens. */
function drawnSetups(draw, kits) {
  const minutes = kits.map((_, a) => kits.map((_, b) => (a === b ? 0 : 1 + draw(12))));
  kits.forEach((_, k) => {
    for (const row of minutes)
      row.forEach((m, b) => {
        row[b] = Math.min(m, row[k] + minutes[k][b]);
      });
  });
  const between = kits.flatMap((from, a) =>
    kits.flatMap((to, b) => (a === b ? [] : [{ from, to, minutes: minutes[a][b] }])),
  );
  return { anyOther: Math.max(...minutes.flat()), between };
}

/** Boards with coats that wait for each other, and odd jobs beside them. */
function drawnTasks(draw, boards, coats, has) {
  const kits = ["thin", "full", "tint"].slice(0, 2 + draw(2));
  const tasks = [];
  const waits = [];
  for (let b = 0; b < boards; b++) {
    for (let c = 0; c < coats; c++) {
      const task = { task: `b${b}c${c}`, minutes: 4 + draw(22), hands: true };
      if (has("set-ups") && draw(5) > 0) task.setup = kits[draw(kits.length)];
      if (draw(6) === 0) task.notBefore = draw(500);
      tasks.push(task);
      if (has("drying places") && draw(2) === 0) {
        const dry = { task: `b${b}d${c}`, minutes: 20 + draw(90), hands: false, needs: { rack: 1 } };
        tasks.push(dry);
        waits.push({ from: task.task, to: dry.task, leastMinutes: 0, mostMinutes: 0 });
      }
      if (c === 0) continue;
      const leastMinutes = draw(3) === 0 ? 600 + draw(800) : draw(90);
      const mostMinutes = draw(2) === 0 ? null : leastMinutes + [30, 300, 1600][draw(3)];
      const night = has("nights") && draw(3) === 0 ? { otherWindow: true } : {};
      waits.push({ from: `b${b}c${c - 1}`, to: task.task, leastMinutes, mostMinutes, ...night });
    }
    if (draw(3) === 0) tasks.push({ task: `job ${b}`, minutes: 5 + draw(40), hands: true });
  }
  if (has("rounds") && boards > 1)
    for (const b of [0, 1]) {
      const task = tasks.find((t) => t.task === `b${b}c0`);
      task.round = "first coats";
      delete task.setup;
    }
  return { tasks, waits };
}

/** `{ given, rules }`: what the planner is asked, and what the check holds its plan against. */
export function drawnAgenda(
  seed,
  kind,
  { boards: mostBoards = 8, coats: mostCoats = 4, evenings: mostEvenings = 6 } = {},
) {
  const random = randomFromSeed(`${kind} ${seed}`);
  const draw = (n) => randomIndex(random, n);
  const has = (what) => features[kind].includes(what);
  const windows = Array.from({ length: 1 + draw(mostEvenings) }, (_, day) => {
    const from = day === 0 ? 0 : day * 1440 + draw(60);
    return [from, from + 60 + draw(150)];
  });
  const { tasks, waits } = drawnTasks(draw, 1 + draw(mostBoards), 1 + draw(mostCoats), has);
  const people = !has("people") ? 1 : has("set-ups") ? 2 + draw(2) : 2;
  const capacity = { person: people, rack: 1 + draw(2) };
  const isSetUp = tasks.some((t) => t.setup !== undefined);
  const setups = isSetUp ? drawnSetups(draw, [...new Set(tasks.flatMap((t) => t.setup ?? []))]) : undefined;
  return {
    given: {
      tasks: tasks.map((t) => ({
        ...t,
        ...(t.notBefore === undefined ? {} : { notBefore: clockOf(t.notBefore) }),
      })),
      waits,
      capacity,
      windows: windows.map((window) => window.map(clockOf)),
      zone: "UTC",
      ...(isSetUp ? { setups } : {}),
    },
    rules: {
      tasks: tasks.map(({ setup, ...t }) => ({ ...t, ...(setup === undefined ? {} : { kit: setup }) })),
      waits,
      capacity,
      windows,
      ...(isSetUp ? { changes: { others: setups.anyOther, between: setups.between } } : {}),
    },
  };
}

/** An answer of the planner in minutes, as the check reads it. */
export const claimedPlan = ({ starts, who, finish, lowerBound, sessions, idleMinutes, provenBest }) => ({
  ...(who === undefined ? {} : { who }),
  starts: Object.fromEntries(Object.entries(starts).map(([task, clock]) => [task, minuteOf(clock)])),
  finish: minuteOf(finish),
  lowerBound: minuteOf(lowerBound),
  sessions,
  idleMinutes,
  isFinishProven: provenBest !== null,
});
