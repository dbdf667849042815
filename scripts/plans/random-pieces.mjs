// Pieces of several surfaces drawn by lot, each as the planner is asked and as the independent check reads it. Times are minutes from the first midnight.
import { randomFromSeed, randomIndex } from "../../dist/core/random.js";

const begin = Date.UTC(2026, 9, 5);
const clockOf = (minute) => new Date(begin + minute * 60_000).toISOString().slice(0, 16);
export const minuteOf = (clock) => (Date.parse(`${clock}Z`) - begin) / 60_000;

const works = ["sand", "de-nib", "level", "spirit-off", "wax"];

function drawnStep(draw, { onlyCoats, longNights }) {
  const what = onlyCoats || draw(3) > 0 ? "coat" : works[draw(works.length)];
  const leastWaitMinutes = longNights && draw(5) === 0 ? 400 + draw(900) : draw(120);
  return {
    what,
    minutesPerM2: 4 + draw(40),
    leastWaitMinutes,
    ...(draw(3) === 0 ? { mostWaitMinutes: leastWaitMinutes + [60, 300, 1600][draw(3)] } : {}),
    ...(!onlyCoats && draw(6) === 0 ? { overnight: true } : {}),
  };
}

function drawnSurfaces(draw, most) {
  const parts = Array.from({ length: 1 + draw(most) }, () => 1 + draw(4));
  const sum = parts.reduce((all, part) => all + part, 0);
  const turns = draw(2) === 0;
  return parts.map((part, i) => ({
    name: `surface ${i + 1}`,
    share: part / sum,
    ...(turns && i > 0 && draw(2) === 0 ? { turned: true } : {}),
  }));
}

/** A piece as `piece-plan` takes it; `small` is for a general-purpose solver, which knows of no nights and of no work that is left and taken up. */
export function drawnPiece(seed, { small = false } = {}) {
  const random = randomFromSeed(`piece ${seed}`);
  const draw = (n) => randomIndex(random, n);
  const steps = Array.from({ length: small ? 2 + draw(2) : 2 + draw(8) }, () =>
    drawnStep(draw, { onlyCoats: small, longNights: !small }),
  );
  steps[0].what = "coat";
  const last = steps.at(-1);
  last.leastWaitMinutes = 0;
  delete last.mostWaitMinutes;
  const windows = Array.from({ length: small ? 1 + draw(4) : 1 + draw(20) }, (_, day) => {
    const from = day * 1440 + 1000 + draw(60);
    return [clockOf(from), clockOf(from + 60 + draw(200))];
  });
  return {
    areaM2: 0.5 + draw(20) / 10,
    method: "brush",
    coats: steps.filter(({ what }) => what === "coat").length,
    cutLbPerGal: 2,
    solvent: { alcohol: "ethanol", volumeFraction: 0.95 },
    steps,
    windows,
    surfaces: drawnSurfaces(draw, small ? 4 : 10),
    hands: 1 + draw(3),
    dryingPlaces: 1 + draw(4),
    ...(!small && draw(3) === 0 ? { turnMinutes: draw(200) } : {}),
  };
}

const minutesOf = ({ minutesPerM2 }, { share }, areaM2) =>
  Math.max(5, Math.round(minutesPerM2 * areaM2 * share));

/** Which thing a surface is on. */
const thingsOf = (surfaces) => {
  let thing = -1;
  return surfaces.map(({ turned }) => (turned ? thing : ++thing));
};

/** Waits on each surface, and until a thing may be turned; `first` and `last` name the parts of a task. */
function waitsOf({ steps, surfaces, turnMinutes }, first, last) {
  const things = thingsOf(surfaces);
  const own = surfaces.flatMap((_, s) =>
    steps.slice(1).map((_, i) => ({
      from: last(i, s),
      to: first(i + 1, s),
      leastMinutes: steps[i].leastWaitMinutes,
      mostMinutes: steps[i].mostWaitMinutes ?? null,
    })),
  );
  const order = steps.flatMap((_, i) => surfaces.map((_, s) => [i, s]));
  const turns = [...new Set(things)].flatMap((thing) => {
    const lane = order.filter(([, s]) => things[s] === thing);
    return lane.slice(1).flatMap(([i, s], k) => {
      const [j, before] = lane[k];
      if (before === s) return [];
      const { what, leastWaitMinutes } = steps[j];
      const leastMinutes = what === "coat" ? (turnMinutes ?? leastWaitMinutes) : leastWaitMinutes;
      return [{ from: last(j, before), to: first(i, s), leastMinutes, mostMinutes: null }];
    });
  });
  return [...own, ...turns];
}

const shop = ({ hands, dryingPlaces, windows }) => ({
  capacity: { person: hands, rack: dryingPlaces },
  windows: windows.map((window) => window.map(minuteOf)),
});

/** Coats and their drying as a general-purpose solver reads them: each surface wants a place until its coat is dry. */
export function smallRules(given) {
  const { steps, surfaces, areaM2 } = given;
  const name = (i, s) => `${i} on ${s}`;
  const all = steps.flatMap((step, i) =>
    surfaces.map((surface, s) => ({ step, i, s, minutes: minutesOf(step, surface, areaM2) })),
  );
  return {
    ...shop(given),
    tasks: [
      ...all.map(({ i, s, minutes }) => ({ task: name(i, s), minutes, hands: true })),
      ...all.map(({ step, i, s, minutes }) => ({
        task: `${name(i, s)} dries`,
        minutes: minutes + step.leastWaitMinutes,
        hands: false,
        needs: { rack: 1 },
      })),
    ],
    waits: [
      ...waitsOf(given, name, name),
      ...all.map(({ i, s, minutes }) => ({
        from: name(i, s),
        to: `${name(i, s)} dries`,
        leastMinutes: -minutes,
        mostMinutes: -minutes,
      })),
    ],
  };
}

/** What a plan's dated steps must obey, with their starts; only for a plan that found room for all. */
export function checkedBy(given, planned) {
  const { steps, surfaces } = given;
  const things = thingsOf(surfaces);
  const parts = new Map(steps.flatMap((_, i) => surfaces.map((_, s) => [`${i} on ${s}`, []])));
  const seen = new Map();
  let i = -1;
  let [of, order] = ["", []];
  for (const step of planned) {
    const s = surfaces.findIndex(({ name }) => name === step.surface);
    // a new step begins where the surfaces begin anew; parts of one surface follow each other
    if (
      i < 0 ||
      s < order.at(-1) ||
      (s === order.at(-1) &&
        surfaces.length === 1 &&
        (seen.get(i) ?? 0) >= minutesOf(steps[i], surfaces[s], given.areaM2))
    ) {
      i += 1;
      order = [];
    }
    of = `${i} on ${s}`;
    if (surfaces.length === 1) seen.set(i, (seen.get(i) ?? 0) + step.minutes);
    order.push(s);
    parts.get(of).push({ start: minuteOf(step.at), minutes: step.minutes });
  }
  const name = (k, s, p) => `${k} on ${s} part ${p}`;
  const last = (k, s) => name(k, s, parts.get(`${k} on ${s}`).length - 1);
  const tasks = [];
  const starts = {};
  const waits = waitsOf(given, (k, s) => name(k, s, 0), last);
  const { capacity, windows } = shop(given);
  steps.forEach((step, k) => {
    surfaces.forEach((surface, s) => {
      const its = parts.get(`${k} on ${s}`);
      const before = k === 0 || !steps[k - 1].overnight ? undefined : parts.get(`${k - 1} on ${s}`).at(-1);
      const night = before === undefined ? 0 : (Math.floor(before.start / 1440) + 1) * 1440;
      its.forEach(({ start, minutes }, p) => {
        tasks.push({ task: name(k, s, p), minutes, hands: true, notBefore: night });
        starts[name(k, s, p)] = start;
        if (p > 0) waits.push({ from: name(k, s, p - 1), to: name(k, s, p), leastMinutes: 0 });
      });
      const worked = its.reduce((sum, { minutes }) => sum + minutes, 0);
      // what was planned is what there was to do, to the minute; a task without a start is a fault
      const exact = Math.max(5, step.minutesPerM2 * given.areaM2 * surface.share);
      if (Math.abs(worked - exact) > 0.5 + 1e-9)
        tasks.push({ task: `all of ${k} on ${s}`, minutes: 1, hands: true });
      if (step.what !== "coat") return;
      // a thing lies in one place: its drying gives way to that of its next side
      const [{ start, minutes }] = its;
      const dry = start + minutes + step.leastWaitMinutes;
      const nextOn = steps.flatMap((other, j) =>
        other.what === "coat"
          ? surfaces.flatMap((_, t) =>
              things[t] === things[s] ? parts.get(`${j} on ${t}`).map((part) => part.start) : [],
            )
          : [],
      );
      const until = Math.min(dry, ...nextOn.filter((at) => at > start));
      tasks.push({ task: `${k} on ${s} dries`, minutes: until - start, hands: false, needs: { rack: 1 } });
      starts[`${k} on ${s} dries`] = start;
    });
  });
  return { rules: { tasks, waits, capacity, windows }, plan: { starts } };
}
