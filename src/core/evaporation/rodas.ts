import { DomainError } from "../domain-error.ts";
import { type Factors, factorInPlace, factorsOf, solveInPlace } from "./lu.ts";

/** dy/dt = f(y), with its Jacobian. */
export interface StiffSystem {
  readonly size: number;
  readonly rates: (y: Float64Array, out: Float64Array) => void;
  /** Writes ∂f/∂y, row by row; `rates` are those at `y`. */
  readonly jacobian: (y: Float64Array, rates: Float64Array, out: Float64Array) => void;
  /** What is small for each state, in its own unit; infinite for one that the step need not watch. */
  readonly small: Float64Array;
}

const gamma = 0.25;
/** The method's own coefficients, stage by stage: E. Hairer, G. Wanner, Solving ODEs II (1996), section VI.4, RODAS. */
const a = [
  [],
  [1.544],
  [0.9466785280815826, 0.2557011698983284],
  [3.314825187068521, 2.896124015972201, 0.9986419139977817],
  [1.221224509226641, 6.019134481288629, 12.53708332932087, -0.687886036105895],
] as const;
const c = [
  [],
  [-5.6688],
  [-0.2430093356833875e1, -0.2063599157091915],
  [-0.1073529058151375, -0.9594562251023355e1, -0.2047028614809616e2],
  [0.7496443313967647e1, -0.1024680431464352e2, -0.3399990352819905e2, 0.117089089320616e2],
  [
    0.8083246795921522e1, -0.7981132988064893e1, -0.3152159432874371e2, 0.1631930543123136e2,
    -0.6058818238834054e1,
  ],
] as const;
const stages = 6;

/** One step of a stiffly accurate Rosenbrock method of order 4, kept apart from the choice of its length. */
export class RodasStep {
  readonly #system: StiffSystem;
  readonly #jacobian: Float64Array;
  readonly #factors: Factors;
  readonly #u: readonly Float64Array[];
  readonly #rates: Float64Array;
  readonly #stageRates: Float64Array;
  readonly #start: Float64Array;
  /** Where the last step went, and by how much it may be off. */
  readonly end: Float64Array;
  readonly error: Float64Array;

  constructor(system: StiffSystem) {
    const n = system.size;
    this.#system = system;
    this.#jacobian = new Float64Array(n * n);
    this.#factors = factorsOf(n);
    this.#u = Array.from({ length: stages }, () => new Float64Array(n));
    [this.#rates, this.#stageRates, this.#start, this.end] = Array.from(
      { length: 4 },
      () => new Float64Array(n),
    ) as [Float64Array, Float64Array, Float64Array, Float64Array];
    this.error = this.#u[stages - 1] as Float64Array;
  }

  /** Sets out from a state: rates and Jacobian are worked out once, for steps of any length. */
  from(y: Float64Array): void {
    this.#start.set(y);
    this.#system.rates(this.#start, this.#rates);
    this.#jacobian.fill(0);
    this.#system.jacobian(this.#start, this.#rates, this.#jacobian);
  }

  /** Steps by h; the result stands in `end` and `error`. */
  take(h: number): void {
    const n = this.#system.size;
    const { lu } = this.#factors;
    for (let i = 0; i < lu.length; i++) lu[i] = -(this.#jacobian[i] as number);
    for (let i = 0; i < n; i++) lu[i * n + i] = (lu[i * n + i] as number) + 1 / (gamma * h);
    factorInPlace(this.#factors);
    for (let s = 0; s < stages; s++) this.#stage(s, h);
    add(this.end, this.error, 1);
  }

  #stage(s: number, h: number): void {
    const u = this.#u[s] as Float64Array;
    if (s === 0) u.set(this.#rates);
    else {
      if (s < 5) {
        this.end.set(this.#start);
        addAll(this.end, this.#u, a[s] ?? [], 1);
      } else add(this.end, this.#u[4] as Float64Array, 1);
      this.#system.rates(this.end, this.#stageRates);
      u.set(this.#stageRates);
      addAll(u, this.#u, c[s] ?? [], 1 / h);
    }
    solveInPlace(this.#factors, u);
  }
}

function add(to: Float64Array, from: Float64Array, factor: number): void {
  for (let i = 0; i < to.length; i++) to[i] = (to[i] as number) + factor * (from[i] as number);
}

function addAll(
  to: Float64Array,
  from: readonly Float64Array[],
  factors: readonly number[],
  times: number,
): void {
  for (let j = 0; j < factors.length; j++) add(to, from[j] as Float64Array, (factors[j] as number) * times);
}

/** The root mean square of the error in units of what is allowed; infinite where a number is not one. */
function sizeOfError(step: RodasStep, y: Float64Array, small: Float64Array, tolerance: number): number {
  let [sum, watched] = [0, 0];
  for (let i = 0; i < y.length; i++) {
    const least = small[i] as number;
    if (least === Number.POSITIVE_INFINITY) continue;
    const size = Math.max(Math.abs(y[i] as number), Math.abs(step.end[i] as number));
    sum += ((step.error[i] as number) / (tolerance * (size + least))) ** 2;
    watched++;
  }
  const size = Math.sqrt(sum / watched);
  return Number.isFinite(size) ? size : Number.POSITIVE_INFINITY;
}

const mostSteps = 20_000;

export interface Integration {
  readonly from: Float64Array;
  readonly until: number;
  readonly tolerance: number;
  readonly firstStep: number;
  /** Called after every accepted step with the stepper that took it, which can still repeat it shorter; true ends the run. */
  readonly onStep: (time: number, length: number, step: RodasStep) => boolean;
}

/**
 * Integrates a stiff system from 0 to a time, with steps as long as the error allows.
 *
 *     (1/(γh)·I − J)·ui = f(y + Σ aij·uj) + Σ cij·uj/h,   y′ = y + Σ mi·ui,   error = u6
 *
 * @param system       n equations; time is in s
 * @param integration  from which state, until when [s], relative tolerance a step, and what to do after each
 * @throws DomainError `no-convergence` when the steps get too many or too short
 *
 * Valid:    autonomous systems with smooth rates
 * Accuracy: order 4; the local error of each watched state stays below tolerance·(|y| + small)
 * Source:   E. Hairer, G. Wanner, Solving Ordinary Differential Equations II (1996), section VI.4 (RODAS)
 */
export function integrateStiff(system: StiffSystem, integration: Integration): void {
  const step = new RodasStep(system);
  const y = integration.from.slice();
  let [time, h, afresh] = [0, integration.firstStep, true];
  for (let tried = 0; time < integration.until; tried++) {
    if (tried >= mostSteps || !(h > 1e-14 * (time + 1)))
      throw new DomainError({ code: "no-convergence", field: "drying", value: time });
    const length = Math.min(h, integration.until - time);
    if (afresh) step.from(y);
    step.take(length);
    const error = sizeOfError(step, y, system.small, integration.tolerance);
    h = length * Math.min(5, Math.max(0.15, 0.9 * error ** -0.25));
    afresh = error <= 1;
    if (!afresh) continue;
    const end = step.end.slice();
    time = length < integration.until - time ? time + length : integration.until;
    if (integration.onStep(time, length, step)) return;
    y.set(end);
  }
}
