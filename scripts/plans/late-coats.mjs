// What may become of a drawn plan: some of it is done, one coat later than planned. As the planner is asked, and as the check reads it.
import { randomFromSeed, randomIndex } from "../../dist/core/random.js";
import { clockOf, minuteOf } from "./random-agendas.mjs";

/** What each of those who did something held last: `{ who, kit, until }`, people from 1. */
function heldBy(begun, starts, who = {}) {
  const held = new Map();
  for (const { task, kit, minutes } of begun) {
    const last = { who: who[task] ?? 1, kit, until: starts.get(task) + minutes };
    if (last.until > (held.get(last.who)?.until ?? -1)) held.set(last.who, last);
  }
  return [...held.values()];
}

/** `{ given, rules, old, oldFinish }` for an agenda and its plan, or nothing when nothing of it was begun. */
export function lateCoat(seed, { given, rules }, answer) {
  const random = randomFromSeed(`late ${seed}`);
  const old = Object.fromEntries(
    Object.entries(answer.starts).map(([task, clock]) => [task, minuteOf(clock)]),
  );
  const hands = rules.tasks.filter((t) => t.hands);
  const byStart = hands.toSorted((a, b) => old[a.task] - old[b.task]);
  const begun = byStart.slice(0, 1 + randomIndex(random, byStart.length));
  const late = begun.at(-1);
  const starts = new Map(begun.map((t) => [t.task, old[t.task]]));
  starts.set(late.task, old[late.task] + randomIndex(random, 400));
  const now = Math.max(...begun.map((t) => starts.get(t.task) + t.minutes)) + randomIndex(random, 60);
  const brokenRounds = new Set(begun.flatMap((t) => t.round ?? []));
  return {
    old,
    oldFinish: Math.max(...rules.tasks.map((t) => old[t.task] + t.minutes)),
    given: {
      ...given,
      replan: {
        starts: answer.starts,
        now: clockOf(now),
        ...(answer.who === undefined ? {} : { who: answer.who }),
        done: Object.fromEntries([...starts].map(([task, minute]) => [task, clockOf(minute)])),
      },
    },
    rules: {
      ...rules,
      held: heldBy(begun, starts, answer.who),
      tasks: rules.tasks.map(({ notBefore = 0, round, ...t }) => {
        const fixed = starts.get(t.task);
        // what is done is beyond every rule but the waits after it
        if (fixed !== undefined) return { task: t.task, minutes: t.minutes, hands: false, fixed };
        const keptRound = round === undefined || brokenRounds.has(round) ? {} : { round };
        return { ...t, ...keptRound, notBefore: t.hands ? Math.max(now, notBefore) : notBefore };
      }),
      waits: rules.waits.filter(({ to }) => !starts.has(to)),
    },
  };
}
