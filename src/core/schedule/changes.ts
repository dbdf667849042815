import { DomainError } from "../domain-error.ts";
import { type Agenda, handsNeeded, type Setups, wrong } from "./agenda.ts";

/** What is in the hand, by task, and the minutes from one thing to another. */
export interface Changes {
  /** By task of the agenda; −1 where no hands are taken. */
  readonly kitOf: Int32Array;
  /** By kit and kit; the last kit is bare hands. */
  readonly minutes: readonly Int32Array[];
}

function checkNames({ anyOther, between }: Setups, kits: readonly string[]): void {
  between.forEach(({ from, to, minutes }, k) => {
    for (const [end, name] of [
      ["from", from],
      ["to", to],
    ] as const)
      if (!kits.includes(name))
        throw new DomainError({
          code: "unknown-name",
          field: `setups.between[${k}].${end}`,
          value: name,
          limits: { allowed: kits },
        });
    const field = `setups.between[${k}]`;
    if (from === to) throw wrong(`${field}.to`, to, "From a set-up to itself there is nothing to change.");
    const first = between.findIndex((b) => b.from === from && b.to === to);
    if (first < k) throw wrong(field, minutes, `The change from ${from} to ${to} is given twice.`);
  });
  if (kits.length === 0)
    throw wrong("setups", { anyOther, between }, "No task says its set-up: it is given as tasks[…].setup.");
}

/** A change that takes longer than two others that come to the same is not meant. */
function checkDetours({ between }: Setups, kits: readonly string[], minutes: readonly Int32Array[]): void {
  kits.forEach((from, a) => {
    kits.forEach((to, c) => {
      const direct = minutes[a]?.[c] ?? 0;
      const by = kits.findIndex((_, b) => (minutes[a]?.[b] ?? 0) + (minutes[b]?.[c] ?? 0) < direct);
      if (by < 0) return;
      const at = between.findIndex((x) => x.from === from && x.to === to);
      const most = (minutes[a]?.[by] ?? 0) + (minutes[by]?.[c] ?? 0);
      throw wrong(
        at < 0 ? "setups.anyOther" : `setups.between[${at}].minutes`,
        direct,
        `From ${from} to ${to} by way of ${kits[by]} takes ${most} minutes only; at most so many would do.`,
      );
    });
  });
}

/**
 * The changes of pad and jar between hands-on tasks of the same person. They are counted by the clock from the end of one task to
 * the start of the next, so that a night holds every change: a session begins with its first pad and jar at hand. A task
 * without a set-up leaves the hands bare, and after it a set-up takes its longest change.
 *
 * @param agenda  tasks with `setup`, and minutes between set-ups
 * @returns       kits by task and minutes between kits (k×k), or nothing where no set-ups are given
 * @throws DomainError for a task of several pairs of hands, unknown names, a set-up without minutes, and changes longer than a detour
 *
 * Valid:  tasks of one pair of hands each
 * Source: set-up times that depend on the order and keep the triangle inequality: A. Allahverdi, "The third comprehensive
 *         survey on scheduling problems with setup times/costs", Eur. J. Oper. Res. 246 (2015) 345, section 1
 */
export function changesOf(agenda: Agenda): Changes | undefined {
  const { setups, tasks } = agenda;
  if (setups === undefined) return undefined;
  const kits = [...new Set(tasks.flatMap((t) => t.setup ?? []))];
  checkNames(setups, kits);
  tasks.forEach((t, k) => {
    if (handsNeeded(t) > 1)
      throw wrong(
        `tasks[${k}].needs.person`,
        handsNeeded(t),
        "Where set-ups are given each task takes one pair of hands.",
      );
    if (t.setup === undefined) return;
    if (!t.hands) throw wrong(`tasks[${k}].setup`, t.setup, "A set-up is for a hands-on task.");
    if (t.minutes === 0)
      throw wrong(`tasks[${k}].minutes`, 0, "A task with a set-up takes a minute or more.", 1);
  });
  const bare = kits.length;
  const minutes = [...kits, undefined].map(() => new Int32Array(bare + 1).fill(setups.anyOther));
  for (const { from, to, minutes: m } of setups.between)
    (minutes[kits.indexOf(from)] as Int32Array)[kits.indexOf(to)] = m;
  minutes.forEach((row, kit) => {
    row[kit] = 0;
    row[bare] = 0;
  });
  const longestInto = (kit: number): number =>
    Math.max(setups.anyOther, ...minutes.map((row) => row[kit] as number));
  kits.forEach((_, kit) => {
    (minutes[bare] as Int32Array)[kit] = longestInto(kit);
  });
  checkDetours(setups, kits, minutes);
  const kitOf = Int32Array.from(tasks, (t) => {
    if (handsNeeded(t) === 0 || t.minutes === 0) return -1;
    return t.setup === undefined ? bare : kits.indexOf(t.setup);
  });
  return { kitOf, minutes };
}
