// A small agenda written anew as a mixed-integer program, for a general-purpose solver that knows nothing of the planner.

const sum = (terms) => terms.join(" + ");

/** Minutes from one kit to another; after bare hands a kit takes its longest change. */
function changeFor({ changes }) {
  if (changes === undefined) return () => 0;
  const { others, between } = changes;
  return (before, after) => {
    if (after.kit === undefined || before.kit === after.kit) return 0;
    if (before.kit === undefined)
      return Math.max(others, ...between.filter((b) => b.to === after.kit).map((b) => b.minutes));
    return between.find((b) => b.from === before.kit && b.to === after.kit)?.minutes ?? others;
  };
}

/** Of two tasks the second is for a window that opens after the end of the first. */
function nightRows({ tasks, windows }, a, b) {
  const { fixed, minutes } = tasks[a];
  return windows.map(([opens], w) => {
    const before = windows.slice(0, w).map((_, v) => ` - z${a}_${v}`);
    if (fixed !== undefined) return `z${b}_${w} <= ${opens >= fixed + minutes ? 1 : 0}`;
    return `z${b}_${w}${before.join("")} <= 0`;
  });
}

/** Rows, binaries and bounds that hold whatever the goal. */
function rulesOf(rules) {
  const { tasks, waits, windows, capacity } = rules;
  const rows = [];
  const binaries = [];
  const horizon = windows.at(-1)[1] + tasks.reduce((total, t) => total + t.minutes, 0) + 200;
  const change = changeFor(rules);
  const at = (name) => tasks.findIndex((t) => t.task === name);
  tasks.forEach((t, i) => {
    rows.push(`F - s${i} >= ${t.minutes}`);
    rows.push(t.fixed === undefined ? `s${i} >= ${t.notBefore ?? 0}` : `s${i} = ${t.fixed}`);
    if (!t.hands) return;
    const inside = windows.map((_, w) => `z${i}_${w}`);
    binaries.push(...inside);
    rows.push(`${sum(inside)} = 1`);
    rows.push(`s${i} ${windows.map(([from], w) => `- ${from} z${i}_${w}`).join(" ")} >= 0`);
    rows.push(`s${i} ${windows.map(([, until], w) => `- ${until} z${i}_${w}`).join(" ")} <= -${t.minutes}`);
    windows.forEach((_, w) => {
      rows.push(`u${w} - z${i}_${w} >= 0`);
    });
  });
  for (const { from, to, leastMinutes, mostMinutes, otherWindow } of waits) {
    const [a, b] = [at(from), at(to)];
    rows.push(`s${b} - s${a} >= ${tasks[a].minutes + leastMinutes}`);
    if (otherWindow) rows.push(...nightRows(rules, a, b));
    if (mostMinutes !== null) rows.push(`s${b} - s${a} <= ${tasks[a].minutes + mostMinutes}`);
  }
  const round = tasks.flatMap((t, i) => (t.round === undefined ? [] : [i]));
  round.slice(1).forEach((b, k) => {
    rows.push(`s${b} - s${round[k]} = ${tasks[round[k]].minutes}`);
  });
  // who of several, or which place: two with the same do not overlap
  const share = (name, users, count, gap) => {
    for (const i of users) {
      if (count === 1) continue;
      const places = Array.from({ length: count }, (_, p) => `${name}${i}_${p}`);
      binaries.push(...places);
      rows.push(`${sum(places)} = 1`);
    }
    users.forEach((i, k) => {
      for (const j of users.slice(k + 1)) {
        const [before, after] = [`${name}${i}_before_${j}`, `${name}${j}_before_${i}`];
        binaries.push(before, after);
        rows.push(`s${j} - s${i} - ${horizon} ${before} >= ${tasks[i].minutes + gap(i, j) - horizon}`);
        rows.push(`s${i} - s${j} - ${horizon} ${after} >= ${tasks[j].minutes + gap(j, i) - horizon}`);
        if (count === 1) rows.push(`${before} + ${after} >= 1`);
        else
          for (let p = 0; p < count; p++)
            rows.push(`${before} + ${after} - ${name}${i}_${p} - ${name}${j}_${p} >= -1`);
      }
    });
  };
  // whoever held something changes from it first
  for (const { who, kit, until } of rules.held ?? [])
    tasks.forEach((t, j) => {
      if (!t.hands) return;
      const free = until + change({ kit }, t);
      if (capacity.person === 1) rows.push(`s${j} >= ${free}`);
      else rows.push(`s${j} - ${horizon} h${j}_${who - 1} >= ${free - horizon}`);
    });
  const indices = [...tasks.keys()];
  share(
    "h",
    indices.filter((i) => tasks[i].hands),
    capacity.person,
    (i, j) => change(tasks[i], tasks[j]),
  );
  // the tasks of a round have one pair of hands
  if (capacity.person > 1)
    for (const b of round.slice(1))
      for (let p = 0; p < capacity.person; p++) rows.push(`h${b}_${p} - h${round[0]}_${p} = 0`);
  share(
    "r",
    indices.filter((i) => tasks[i].needs?.rack === 1),
    capacity.rack,
    () => 0,
  );
  return { rows, binaries, horizon };
}

/** For each window its first start and its last end. */
function spanRows({ tasks, windows }, horizon) {
  return windows.flatMap((_, w) => [
    `e${w} - f${w} >= 0`,
    ...tasks.flatMap(({ hands, minutes }, i) =>
      hands
        ? [
            `f${w} - s${i} + ${horizon} z${i}_${w} <= ${horizon}`,
            `e${w} - s${i} - ${horizon} z${i}_${w} >= ${minutes - horizon}`,
          ]
        : [],
    ),
  ]);
}

/** The least of a goal, or null when nothing holds the rows. */
function least(highs, goal, rows, binaries) {
  const all = rows.map((row, k) => ` r${k}: ${row}`).join("\n");
  const text = `Minimize\n goal: ${goal}\nSubject To\n${all}\nBinary\n ${binaries.join(" ")}\nEnd\n`;
  const { Status, ObjectiveValue } = highs.solve(text, { mip_rel_gap: 0, mip_abs_gap: 0.5 });
  if (Status === "Infeasible") return null;
  if (Status !== "Optimal") throw new Error(Status);
  return Math.round(ObjectiveValue);
}

/** `{ finish, sessions, idleMinutes }` of a best plan, goal by goal, or null when there is none. */
export function bestByMip(highs, rules) {
  const { rows, binaries, horizon } = rulesOf(rules);
  const windows = [...rules.windows.keys()];
  const used = windows.map((w) => `u${w}`);
  const solve = (goal, more) => least(highs, goal, [...rows, ...more], [...binaries, ...used]);
  const finish = solve("F", []);
  if (finish === null) return null;
  const kept = [`F <= ${finish}`];
  const sessions = solve(sum(used), kept);
  kept.push(`${sum(used)} <= ${sessions}`, ...spanRows(rules, horizon));
  const spans = solve(windows.map((w) => `e${w} - f${w}`).join(" + "), kept);
  const work = rules.tasks.reduce((total, t) => total + (t.hands ? t.minutes : 0), 0);
  return { finish, sessions, idleMinutes: rules.capacity.person * spans - work };
}

/**
 * `{ moved, sessions, idleMinutes }` of a plan that ends no later than the old one, or as soon after as can be: the fewest
 * hands-on tasks that move, then the sessions and the idle minutes; null when there is none.
 */
export function bestAgainByMip(highs, rules, old, oldFinish) {
  const { rows, binaries, horizon } = rulesOf(rules);
  const windows = [...rules.windows.keys()];
  const used = windows.map((w) => `u${w}`);
  const left = rules.tasks.flatMap((t, i) => (t.hands ? [i] : []));
  const moves = left.map((i) => `m${i}`);
  const solve = (goal, more) => least(highs, goal, [...rows, ...more], [...binaries, ...used, ...moves]);
  const kept = left.flatMap((i) => {
    const start = old[rules.tasks[i].task];
    return [`s${i} - ${horizon} m${i} <= ${start}`, `s${i} + ${horizon} m${i} >= ${start}`];
  });
  const finish = solve("F", kept);
  if (finish === null) return null;
  if (left.length === 0) return { moved: 0, sessions: 0, idleMinutes: 0 };
  kept.push(`F <= ${Math.max(finish, oldFinish)}`);
  const moved = solve(sum(moves), kept);
  kept.push(`${sum(moves)} <= ${moved}`);
  const sessions = solve(sum(used), kept);
  kept.push(`${sum(used)} <= ${sessions}`, ...spanRows(rules, horizon));
  const spans = solve(windows.map((w) => `e${w} - f${w}`).join(" + "), kept);
  const work = rules.tasks.reduce((total, t) => total + (t.hands ? t.minutes : 0), 0);
  return { moved, sessions, idleMinutes: rules.capacity.person * spans - work };
}
