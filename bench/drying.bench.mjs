// A film followed for 12 hours, and the live margin of a bench of twelve jars. The peer, a general-purpose solver for
// equations that are not stiff, gets through the first quarter of an hour: the rest would take it minutes.
import { Solver } from "odex";
import { blushOfSetup } from "../dist/core/evaporation/blush.js";
import { dryFilm } from "../dist/core/evaporation/drying.js";
import { six, twelve } from "./drying-setups.mjs";
import { medianOf } from "./median.mjs";

const timed = (work) => {
  const start = performance.now();
  work();
  return performance.now() - start;
};

const quarter = { ...six, seconds: 900 };

/** Every state in what is a thousandth of it, so that one tolerance suits all; as exact as our own run. */
function solvedByPeer(equations) {
  const scale = Array.from(equations.small, (small) => (Number.isFinite(small) ? 1 / small : 1e-3));
  const y = new Float64Array(equations.size);
  const rates = new Float64Array(equations.size);
  const solver = new Solver(equations.size);
  Object.assign(solver, {
    absoluteTolerance: 1e-5,
    relativeTolerance: 1e-5,
    maxSteps: 1e7,
    initialStepSize: 1e-3,
  });
  const f = (_, scaled) => {
    for (let i = 0; i < y.length; i++) y[i] = scaled[i] / scale[i];
    equations.rates(y, rates);
    return Array.from(rates, (rate, i) => rate * scale[i]);
  };
  const start = Array.from(equations.start, (value, i) => value * scale[i]);
  const { y: end } = solver.solve(f, 0, start, quarter.seconds);
  return end.map((value, i) => value / scale[i]);
}

/** The two have to come to the same film, or their times say nothing. */
function checkAlike(ours, theirs, equations) {
  const whole = equations.masses(equations.start).reduce((sum, m) => sum + m, 0);
  const [a, b] = [equations.masses(ours), equations.masses(theirs)];
  const apart = Math.max(...a.map((mass, i) => Math.abs(mass - b[i]))) / whole;
  if (!(apart < 1e-4)) throw new Error(`the two solvers are ${apart} of the film apart`);
}

async function quarterOfAnHour() {
  let theirs;
  const { equations, run } = dryFilm(quarter);
  const peer = timed(() => {
    theirs = solvedByPeer(equations);
  });
  checkAlike(run.states.at(-1).y, theirs, equations);
  return {
    name: "the first quarter of an hour of it, median of 50",
    value: await medianOf(50, () => timed(() => dryFilm(quarter))),
    unit: "ms",
    peer: { name: "odex 2.0.4 on the same equations", value: peer },
  };
}

export async function figures() {
  const run = () => {
    if (dryFilm(six).touchDry === null) throw new Error("the film did not dry");
  };
  const margins = () => {
    if (twelve.map((jar) => blushOfSetup(jar)).some((blush) => blush === undefined))
      throw new Error("a jar was not judged");
  };
  for (let i = 0; i < 20; i++) run();
  return [
    {
      name: "six components, 12 hours, median of 50",
      value: await medianOf(50, () => timed(run)),
      unit: "ms",
      atMost: 20,
    },
    await quarterOfAnHour(),
    {
      name: "the margin of twelve jars, median of 20",
      value: await medianOf(20, () => timed(margins)),
      unit: "ms",
      atMost: 100,
    },
  ];
}
