import type { Kelvin } from "../units.ts";
import { FilmSurface, type Flows, type RoomAir, type WetFilm } from "./film-surface.ts";
import type { StiffSystem } from "./rodas.ts";
import type { Slab } from "./wood-slab.ts";

const resinHeatCapacity = 1500; // J/(kg·K), from memory
/** K, for the slope of everything with the film's temperature. */
const temperatureStep = 1e-4;
const at = (x: Readonly<Float64Array>, i: number): number => x[i] as number; // inside the arrays' own lengths

export interface FilmStart {
  readonly film: Kelvin;
  readonly wood: Kelvin;
}

/** What a run adds up beside the states, by area: nothing depends on it. */
export interface Sums {
  /** kg/m² gone into the air, condensed water taken off. */
  readonly mass: number;
  /** J/m². */
  readonly fromAir: number;
  readonly withVapour: number;
}

/**
 * The equations of a drying film on wood. State: moles of each liquid [mol/m²]; heat of the film above the air's
 * temperature [J/m²]; the same of each layer of wood; then the three sums. Heat and moles are the states, and not
 * temperature and shares, because a step then conserves what is conserved.
 *
 *     dni/dt = −Ni,   dE/dt = qair + qwood − Σ Ni·(Δhi(T) + cpi·(T − Tair)),   T = Tair + E/(Σ ni·cpi + cresin)
 */
export class FilmEquations implements StiffSystem {
  readonly size: number;
  readonly small: Float64Array;
  readonly start: Float64Array;
  readonly surface: FilmSurface;
  readonly #wood: Slab | null;
  readonly #count: number;
  readonly #layers: number;
  readonly #flows: Flows;
  readonly #moved: Float64Array;
  readonly #column: Float64Array;
  readonly #byTemperature: Float64Array;

  constructor(film: WetFilm, air: RoomAir, wood: Slab | null, start: FilmStart) {
    this.surface = new FilmSurface(film, air);
    this.#wood = wood;
    this.#count = film.components.length;
    this.#layers = wood?.capacities.length ?? 0;
    this.size = this.#count + 1 + this.#layers + 3;
    this.#flows = this.surface.noFlows();
    this.#moved = new Float64Array(this.size);
    this.#column = new Float64Array(this.size);
    this.#byTemperature = new Float64Array(this.size);
    this.start = this.#startState(start);
    this.small = this.#smallness();
  }

  #startState({ film, wood }: FilmStart): Float64Array {
    const y = new Float64Array(this.size);
    const air = this.surface.air.temperature;
    y.set(this.surface.film.moles);
    y[this.#count] = this.#capacity(y) * (film - air);
    this.#wood?.capacities.forEach((c, i) => {
      y[this.#count + 1 + i] = c * (wood - air);
    });
    return y;
  }

  /** A thousandth of the liquid; a kelvin of film or wood. The sums need no watching. */
  #smallness(): Float64Array {
    const small = new Float64Array(this.size).fill(Number.POSITIVE_INFINITY);
    const moles = this.surface.film.moles.reduce((sum, n) => sum + n, 0);
    small.fill(1e-3 * moles, 0, this.#count);
    small[this.#count] = this.#capacity(this.start);
    this.#wood?.capacities.forEach((c, i) => {
      small[this.#count + 1 + i] = c;
    });
    return small;
  }

  #capacity(y: Readonly<Float64Array>): number {
    let sum = this.surface.film.resinMass * resinHeatCapacity;
    for (let i = 0; i < this.#count; i++) sum += at(y, i) * at(this.surface.heatCapacity, i);
    return sum;
  }

  /** Of the film, K. */
  temperature = (y: Readonly<Float64Array>): number =>
    this.surface.air.temperature + at(y, this.#count) / this.#capacity(y);

  /** Of the liquids, kg/m², in the order of the components. */
  masses = (y: Readonly<Float64Array>): readonly number[] =>
    this.surface.film.components.map((_, i) => at(y, i) * at(this.surface.molarMass, i));

  sums(y: Readonly<Float64Array>): Sums {
    const n = this.size;
    return { mass: at(y, n - 3), fromAir: at(y, n - 2), withVapour: at(y, n - 1) };
  }

  /** Film and wood above the air's temperature, J/m². */
  heat(y: Readonly<Float64Array>): number {
    let sum = 0;
    for (let i = this.#count; i < this.size - 3; i++) sum += at(y, i);
    return sum;
  }

  /** W/m² out of the wood into the film. */
  #fromWood(y: Readonly<Float64Array>, temperature: number): number {
    if (this.#wood === null) return 0;
    const above = at(y, this.#count + 1) / at(this.#wood.capacities, 0);
    return at(this.#wood.conductances, 0) * (this.surface.air.temperature + above - temperature);
  }

  rates = (y: Float64Array, out: Float64Array): void => this.#ratesAt(y, this.temperature(y), out);

  #ratesAt(y: Float64Array, t: number, out: Float64Array): void {
    const flows = this.#flows;
    this.surface.flows(y, t, flows);
    const fromWood = this.#fromWood(y, t);
    for (let i = 0; i < this.#count; i++) out[i] = -at(flows.moles, i);
    out[this.#count] = flows.fromAir + fromWood - flows.withVapour;
    this.#conduction(y, out, fromWood);
    const n = this.size;
    out[n - 3] = flows.mass;
    out[n - 2] = flows.fromAir;
    out[n - 1] = flows.withVapour;
  }

  #conduction(y: Readonly<Float64Array>, out: Float64Array, fromWood: number): void {
    const first = this.#count + 1;
    let down = -fromWood;
    for (let i = 0; i < this.#layers; i++) {
      const next =
        i + 1 < this.#layers ? this.#between(i + 1) * (this.#above(y, i) - this.#above(y, i + 1)) : 0;
      out[first + i] = down - next;
      down = next;
    }
  }

  #between = (i: number): number => at((this.#wood as Slab).conductances, i); // called where there is wood
  #above = (y: Readonly<Float64Array>, i: number): number =>
    at(y, this.#count + 1 + i) / at((this.#wood as Slab).capacities, i);

  /**
   * The film's columns by small differences, the moles at one temperature, since most of the work depends on that alone;
   * how they move the temperature is known. The wood's columns, which are constants, as they are.
   */
  jacobian = (y: Float64Array, rates: Float64Array, out: Float64Array): void => {
    const n = this.size;
    const t = this.temperature(y);
    const byTemperature = this.#byTemperature;
    this.#ratesAt(y, t + temperatureStep, byTemperature);
    const capacity = this.#capacity(y);
    for (let i = 0; i < n; i++) {
      byTemperature[i] = (at(byTemperature, i) - at(rates, i)) / temperatureStep;
      out[i * n + this.#count] = at(byTemperature, i) / capacity;
    }
    const column = this.#column;
    for (let j = 0; j < this.#count; j++) {
      this.#moved.set(y);
      const step = 1e-7 * Math.max(Math.abs(at(y, j)), 0.01 * at(this.small, j));
      this.#moved[j] = at(y, j) + step;
      const taken = at(this.#moved, j) - at(y, j);
      this.#ratesAt(this.#moved, t, column);
      const warms = ((this.surface.air.temperature - t) * at(this.surface.heatCapacity, j)) / capacity;
      for (let i = 0; i < n; i++)
        out[i * n + j] = (at(column, i) - at(rates, i)) / taken + at(byTemperature, i) * warms;
    }
    this.#woodColumns(out);
  };

  #woodColumns(out: Float64Array): void {
    if (this.#wood === null) return;
    const [n, first] = [this.size, this.#count + 1];
    const { conductances, capacities } = this.#wood;
    for (let i = 0; i < this.#layers; i++) {
      const upper = at(conductances, i) / at(capacities, i);
      const lower = i + 1 < this.#layers ? at(conductances, i + 1) / at(capacities, i) : 0;
      out[(first + i) * n + first + i] = -upper - lower;
      out[(first + i - 1) * n + first + i] = upper;
      if (lower > 0) out[(first + i + 1) * n + first + i] = lower;
    }
  }
}
