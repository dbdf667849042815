import { DomainError } from "../domain-error.ts";
import { type Agenda, type AgendaTask, handsNeeded, placeOf, wrong } from "./agenda.ts";
import { roundsOf } from "./agenda-refusals.ts";
import type { Lag, Project } from "./project.ts";

/** From the start of one task to the start of another, where the second is `least` to `most` after the end of the first. */
function lagsBetween(from: number, to: number, minutes: number, least: number, most: number | null): Lag[] {
  const after: Lag = { from: from + 1, to: to + 1, least: minutes + least };
  return most === null ? [after] : [after, { from: to + 1, to: from + 1, least: -(minutes + most) }];
}

function lagsOf(agenda: Agenda): Lag[] {
  const end = agenda.tasks.length + 1;
  const minutesOf = (k: number): number => agenda.tasks[k]?.minutes ?? 0;
  const around = agenda.tasks.flatMap(({ minutes, notBefore }, k): Lag[] => [
    { from: 0, to: k + 1, least: notBefore },
    { from: k + 1, to: end, least: minutes },
  ]);
  const waits = agenda.waits.flatMap((wait, w): Lag[] => {
    const from = placeOf(agenda, wait.from, `waits[${w}].from`);
    const to = placeOf(agenda, wait.to, `waits[${w}].to`);
    return lagsBetween(from, to, minutesOf(from), wait.leastMinutes, wait.mostMinutes);
  });
  const rounds = [...roundsOf(agenda).values()].flatMap((places) =>
    places.slice(1).flatMap((to, i): Lag[] => {
      const from = places[i] as number;
      return lagsBetween(from, to, minutesOf(from), 0, 0);
    }),
  );
  return [...around, { from: 0, to: end, least: 0 }, ...waits, ...rounds];
}

/** The agenda without its windows: task k is task k + 1 of the project, between a beginning and an end. */
export function projectOf(agenda: Agenda): Project {
  const resources = Object.keys(agenda.capacity);
  const none = resources.map(() => 0);
  const demand = (task: AgendaTask, k: number): number[] => {
    for (const name of Object.keys(task.needs))
      if (!resources.includes(name))
        throw new DomainError({
          code: "unknown-name",
          field: `tasks[${k}].needs.${name}`,
          value: name,
          limits: { allowed: resources },
        });
    return resources.map((name) => (name === "person" ? handsNeeded(task) : (task.needs[name] ?? 0)));
  };
  const demands = agenda.tasks.map(demand);
  agenda.tasks.forEach((task, k) => {
    if (task.hands && handsNeeded(task) === 0)
      throw wrong(`tasks[${k}].needs.person`, 0, "A hands-on task takes one pair of hands or more.", 1);
  });
  demands.forEach((row, k) => {
    row.forEach((used, r) => {
      const name = resources[r] as string;
      const there = agenda.capacity[name] as number;
      if (used > there)
        throw wrong(`tasks[${k}].needs.${name}`, used, `There ${there === 1 ? "is" : "are"} only ${there}.`);
    });
  });
  return {
    durations: [0, ...agenda.tasks.map((t) => t.minutes), 0],
    lags: lagsOf(agenda),
    capacities: Object.values(agenda.capacity),
    demands: [none, ...demands, none],
  };
}
