import type { z } from "zod";
import { DomainError } from "../domain-error.ts";
import type { Agenda } from "../schedule/agenda.ts";
import type { Past } from "../schedule/past.ts";
import type { OldPlan } from "../schedule/replan.ts";
import { type ShopClock, shopClock } from "../schedule/shop-clock.ts";
import type { agendaFields } from "./agenda-fields.ts";

export type AgendaInput = z.output<z.ZodObject<typeof agendaFields, z.core.$strict>>;

const wrong = (field: string, value: unknown, because: string): DomainError =>
  new DomainError({ code: "contradiction", field, value, because });

/** Windows in order of time, in minutes since 1970; those that touch are one. */
function windowsOf(given: AgendaInput, clock: ShopClock): [number, number][] {
  const all = given.windows.map(([from, until], i): [number, number] => {
    const start = clock.minutes(from, `windows[${i}][0]`);
    const end = clock.minutes(until, `windows[${i}][1]`);
    if (end <= start) throw wrong(`windows[${i}]`, [from, until], "It ends before it starts.");
    return [start, end];
  });
  const merged: [number, number][] = [];
  for (const [from, until] of all.sort((a, b) => a[0] - b[0])) {
    const last = merged.at(-1);
    if (last !== undefined && from <= last[1]) last[1] = Math.max(last[1], until);
    else merged.push([from, until]);
  }
  return merged;
}

/** The moment at which a task may start at the earliest, from its own date and its jar's; 1970 where neither says. */
export function releaseOf(given: AgendaInput, k: number, clock: ShopClock): number {
  const { notBefore, jar } = given.tasks[k] as AgendaInput["tasks"][number];
  const own = notBefore === undefined ? 0 : clock.minutes(notBefore, `tasks[${k}].notBefore`);
  if (jar === undefined) return own;
  const at = given.jars?.findIndex((j) => j.jar === jar) ?? -1;
  const found = given.jars?.[at];
  if (found === undefined)
    throw new DomainError({
      code: "unknown-name",
      field: `tasks[${k}].jar`,
      value: jar,
      limits: { allowed: given.jars?.map((j) => j.jar) ?? [] },
    });
  return Math.max(own, clock.minutes(found.readyAt, `jars[${at}].readyAt`));
}

/** Tasks by name once, so that an answer can name them. */
function checkNames(given: AgendaInput): void {
  const seen = new Set<string>();
  given.tasks.forEach(({ task: name }, k) => {
    if (seen.has(name)) throw wrong(`tasks[${k}].task`, name, "Another task has this name.");
    seen.add(name);
  });
}

/** An agenda read, with the moment that its minutes count from. */
export interface ReadAgenda {
  readonly agenda: Agenda;
  readonly clock: ShopClock;
  readonly origin: number;
  readonly replan: { readonly past: Past; readonly old: OldPlan } | undefined;
}

/** Things by the names of tasks, as others by place. */
function byPlace<T>(
  given: AgendaInput,
  things: Readonly<Record<string, T>>,
  field: string,
  read: (thing: T, field: string) => number,
): Map<number, number> {
  const places = new Map(given.tasks.map((t, k) => [t.task, k]));
  return new Map(
    Object.entries(things).map(([task, thing]) => {
      const place = places.get(task);
      if (place === undefined)
        throw new DomainError({
          code: "unknown-name",
          field: `${field}.${task}`,
          value: task,
          limits: { allowed: given.tasks.slice(0, 12).map((t) => t.task) },
        });
      return [place, read(thing, `${field}.${task}`)];
    }),
  );
}

/** Who did what, from 0; of one person it need not be told. */
function whoOf(given: AgendaInput): Map<number, number> {
  const people = given.capacity?.person ?? 1;
  const who = byPlace(given, given.replan?.who ?? {}, "replan.who", (person, field) => {
    if (person <= people) return person - 1;
    throw new DomainError({ code: "out-of-range", field, value: person, limits: { min: 1, max: people } });
  });
  return people === 1 ? new Map() : who;
}

function replanOf(given: AgendaInput, clock: ShopClock) {
  if (given.replan === undefined) return undefined;
  const now = clock.minutes(given.replan.now, "replan.now");
  const done = byPlace(given, given.replan.done ?? {}, "replan.done", clock.minutes);
  for (const [k, start] of done)
    if (start > now) {
      const task = given.tasks[k]?.task ?? "";
      throw wrong(
        `replan.done.${task}`,
        given.replan.done?.[task],
        `It is later than now, ${given.replan.now}.`,
      );
    }
  return {
    now,
    done,
    who: whoOf(given),
    starts: byPlace(given, given.replan.starts, "replan.starts", clock.minutes),
  };
}

/**
 * Reads an agenda: clock times become minutes from the first window, or from the first thing done.
 *
 * @param given  as typed
 * @returns      the agenda, its clock, and what a re-plan is to keep
 * @throws DomainError for times, names, jars and windows that cannot be meant
 *
 * Valid:  as `shopClock`
 * Source: the definition
 */
export function readAgenda(given: AgendaInput): ReadAgenda {
  const clock = shopClock(given.zone);
  checkNames(given);
  const windows = windowsOf(given, clock);
  const replan = replanOf(given, clock);
  const origin = Math.min(windows[0]?.[0] ?? 0, ...(replan?.done.values() ?? []));
  const margin = 1 + (given.marginPercent ?? 0) / 100;
  const agenda = {
    tasks: given.tasks.map((t, k) => ({
      task: t.task,
      minutes: t.minutes,
      hands: t.hands,
      needs: t.needs ?? {},
      notBefore: Math.max(0, releaseOf(given, k, clock) - origin),
      ...(t.setup === undefined ? {} : { setup: t.setup }),
      ...(t.round === undefined ? {} : { round: t.round }),
    })),
    waits: (given.waits ?? []).map((w) => ({
      from: w.from,
      to: w.to,
      leastMinutes: Math.ceil(w.leastMinutes * margin),
      mostMinutes: w.mostMinutes ?? null,
      otherWindow: w.otherWindow ?? false,
    })),
    capacity: { person: 1, ...given.capacity },
    windows: windows.map(([from, until]) => [from - origin, until - origin] as const),
    ...(given.setups === undefined
      ? {}
      : { setups: { anyOther: given.setups.anyOther, between: given.setups.between ?? [] } }),
  };
  if (replan === undefined) return { agenda, clock, origin, replan };
  const done = new Map([...replan.done].map(([k, start]) => [k, start - origin]));
  const old = given.tasks.map((_, k) => done.get(k) ?? (replan.starts.get(k) ?? origin - 1) - origin);
  const past = { done, who: replan.who, now: Math.max(0, replan.now - origin) };
  const who = Int32Array.from(given.tasks, (_, k) => replan.who.get(k) ?? -1);
  const starts = Int32Array.from(old, (m) => Math.max(-1, m));
  return { agenda, clock, origin, replan: { past, old: { starts, who } } };
}
