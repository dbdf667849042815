import { kelvin } from "../units.ts";
import { type ActivityModel, activityModel } from "./activity.ts";
import {
  type AirFlow,
  type AirSide,
  airSide,
  molarMassOfGas,
  moleTransferOfHeat,
  stefanFactor,
  vapourOverWater,
  waterInAir,
} from "./air-side.ts";
import { diffusivityInFilm, interactionOf, resinFactor } from "./resin-hold.ts";
import { latentHeat, pressureCurve } from "./vapour-pressure.ts";
import { propertiesOf, type Volatile } from "./volatiles.ts";

/** A wet film as it lies there at the start, by area. */
export interface WetFilm {
  readonly components: readonly Volatile[];
  /** mol/m², paired with the components. */
  readonly moles: readonly number[];
  /** m³/mol, paired with the components. */
  readonly molarVolumes: readonly number[];
  /** m³/m²: how thick the dry film will be. */
  readonly resinVolume: number;
  /** kg/m². */
  readonly resinMass: number;
}

export interface RoomAir extends AirFlow {
  readonly relativeHumidity: number;
  readonly radiation: boolean;
  /** Heat from elsewhere for each K that the film is colder than the air, W/(m²·K). */
  readonly extraHeat: number;
}

const emissivity = 0.9;
const stefanBoltzmann = 5.670374419e-8;
/**
 * A state tried inside a step that will be refused may be anywhere: these keep the curves defined. No film of the table's
 * liquids comes near them in a shop: the vapours of the liveliest mixture at 50 °C are 0.85 of the gas.
 */
const [coldest, hottest] = [230, 350];
const mostVapour = 0.98;

/** What leaves and arrives at one state, by area and second. */
export interface Flows {
  /** mol/(m²·s) leaving, by component. */
  readonly moles: Float64Array;
  /** kg/(m²·s). */
  mass: number;
  /** W/m² from the air, by radiation and from elsewhere. */
  fromAir: number;
  /** W/m² carried away by vapour: latent heat, and what the liquid had above the air's temperature. */
  withVapour: number;
}

const at = (x: Readonly<Float64Array>, i: number): number => x[i] as number; // inside the arrays' own lengths

/** The film's face to the air: vapours out, water in either direction, heat. */
export class FilmSurface {
  readonly film: WetFilm;
  readonly air: RoomAir;
  readonly method: ActivityModel["method"];
  readonly side: AirSide;
  readonly molarMass: Float64Array;
  readonly heatCapacity: Float64Array;
  readonly #activity: ActivityModel;
  /** Share of water vapour in the room's air, for each component: none but water has any. */
  readonly #outside: Float64Array;
  readonly #waterOutside: number;
  readonly #gasOutside: number;
  readonly #curves: readonly ((t: number) => number)[];
  readonly #transfer: Float64Array;
  readonly #latentAt: Float64Array;
  readonly #latentSlope: Float64Array;
  readonly #interaction: Float64Array;
  readonly #lnGamma: Float64Array;
  readonly #present: Float64Array;
  readonly #vapour: Float64Array;
  /** Of each liquid alone at the temperature last asked for: the film's own column of the Jacobian asks for the same again. */
  readonly #pure: Float64Array;
  #pureAt = Number.NaN;

  constructor(film: WetFilm, air: RoomAir) {
    const { components } = film;
    this.film = film;
    this.air = air;
    this.#activity = activityModel(components);
    this.method = this.#activity.method;
    this.side = airSide(air);
    this.#waterOutside = waterInAir(air.temperature, air.relativeHumidity, air.pressure);
    this.#outside = Float64Array.from(components, (c) => (c === "water" ? this.#waterOutside : 0));
    this.#gasOutside = molarMassOfGas([this.#waterOutside], [propertiesOf("water").molarMass]);
    this.#curves = components.map(pressureCurve);
    this.#transfer = Float64Array.from(components, (c) => vapourOverWater(c) * moleTransferOfHeat);
    this.#latentAt = Float64Array.from(components, (c) => latentHeat(c, air.temperature));
    this.#latentSlope = Float64Array.from(
      components,
      (c, i) => latentHeat(c, kelvin(air.temperature + 1)) - at(this.#latentAt, i),
    );
    this.molarMass = Float64Array.from(components, (c) => propertiesOf(c).molarMass);
    this.heatCapacity = Float64Array.from(components, (c) => propertiesOf(c).heatCapacity);
    this.#interaction = Float64Array.from(components, interactionOf);
    this.#lnGamma = new Float64Array(components.length);
    this.#present = new Float64Array(components.length);
    this.#vapour = new Float64Array(components.length);
    this.#pure = new Float64Array(components.length);
  }

  noFlows = (): Flows => ({
    moles: new Float64Array(this.film.components.length),
    mass: 0,
    fromAir: 0,
    withVapour: 0,
  });

  /** m³/m² of all the liquids. */
  liquidVolume(moles: Readonly<Float64Array>): number {
    const { molarVolumes } = this.film;
    let sum = 0;
    for (let i = 0; i < molarVolumes.length; i++) sum += at(moles, i) * (molarVolumes[i] as number);
    return sum;
  }

  #pressuresAt(t: number): void {
    if (t === this.#pureAt) return;
    for (let i = 0; i < this.#pure.length; i++) this.#pure[i] = (this.#curves[i] as (t: number) => number)(t);
    this.#pureAt = t;
  }

  /** Shares in the gas at the surface, and how hard it is for each to come there through the film [m²·s/mol]. */
  #atSurface(moles: Readonly<Float64Array>, t: number, resistance: Float64Array): void {
    const { molarVolumes, components, resinVolume } = this.film;
    let total = 0;
    let liquid = 0;
    let interactions = 0;
    for (let i = 0; i < components.length; i++) {
      const n = Math.max(at(moles, i), 1e-30);
      this.#present[i] = n;
      total += n;
      liquid += n * (molarVolumes[i] as number);
      interactions += n * at(this.#interaction, i);
    }
    this.#activity.lnGamma(this.#present, t, this.#lnGamma);
    this.#pressuresAt(t);
    const thickness = liquid + resinVolume;
    const resin = resinVolume / thickness;
    const mixture = {
      resin,
      molesPerVolume: total / liquid,
      interactions: interactions / thickness,
    };
    for (let i = 0; i < components.length; i++) {
      const v = molarVolumes[i] as number;
      const hold = resin === 0 ? 1 : resinFactor(at(this.#interaction, i), v, mixture);
      const each = (Math.exp(at(this.#lnGamma, i)) * hold * at(this.#pure, i)) / (this.air.pressure * total);
      this.#vapour[i] = each * at(moles, i);
      // a film that is even inside by a linear driving force: 3D/L
      resistance[i] = resin === 0 ? 0 : (each * thickness ** 2) / (3 * diffusivityInFilm(v, resin, t));
    }
  }

  /** Heat transfer at the state last worked out, W/(m²·K). */
  #heatTransfer(t: number): number {
    const gas = molarMassOfGas(this.#vapour, this.molarMass);
    return this.side.heatTransfer(((gas / this.#gasOutside) * this.air.temperature) / t);
  }

  /** What flows from moles [mol/m²] (more may stand behind them) at a film temperature; `into` is overwritten. */
  flows(moles: Readonly<Float64Array>, temperature: number, into: Flows): void {
    const { air, radiation } = { air: this.air.temperature, radiation: this.air.radiation };
    const t = Math.min(hottest, Math.max(coldest, temperature));
    this.#atSurface(moles, t, into.moles);
    let vapour = 0;
    for (let i = 0; i < this.#vapour.length; i++) vapour += at(this.#vapour, i);
    const heat = this.#heatTransfer(t);
    const drift = stefanFactor(Math.min(vapour, mostVapour), this.#waterOutside);
    into.mass = 0;
    into.withVapour = 0;
    for (let i = 0; i < this.#vapour.length; i++) {
      const throughAir = 1 / (heat * at(this.#transfer, i) * drift);
      const n = (at(this.#vapour, i) - at(this.#outside, i)) / (throughAir + at(into.moles, i));
      into.moles[i] = n;
      into.mass += n * at(this.molarMass, i);
      const perKelvin = at(this.#latentSlope, i) + at(this.heatCapacity, i);
      into.withVapour += n * (at(this.#latentAt, i) + perKelvin * (temperature - air));
    }
    const glow = radiation ? emissivity * stefanBoltzmann * (air ** 4 - temperature ** 4) : 0;
    into.fromAir = (heat + this.air.extraHeat) * (air - temperature) + glow;
  }

  /** Density of the gas at the surface over that of the room's air. */
  densityRatio(moles: Readonly<Float64Array>, temperature: number): number {
    this.#atSurface(moles, temperature, new Float64Array(this.#vapour.length));
    const gas = molarMassOfGas(this.#vapour, this.molarMass);
    return ((gas / this.#gasOutside) * this.air.temperature) / temperature;
  }
}
