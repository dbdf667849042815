import { DomainError } from "./domain-error.ts";

declare const unit: unique symbol;
/** A number in one unit. It computes like a number; only the constructors below make one. */
export type Quantity<U extends string> = number & { readonly [unit]: U };

export type Kelvin = Quantity<"K">;
export type Celsius = Quantity<"°C">;
export type Kilogram = Quantity<"kg">;
export type CubicMetre = Quantity<"m³">;
export type KilogramPerCubicMetre = Quantity<"kg/m³">;
export type Metre = Quantity<"m">;
export type Pascal = Quantity<"Pa">;
export type MassFraction = Quantity<"kg/kg">;
export type VolumeFraction = Quantity<"m³/m³">;
/** Mass of dry resin per volume of solvent added to, kg/m³ (= g/L). The trade's "cut" in SI. */
export type Cut = Quantity<"kg resin/m³ solvent">;

function within<U extends string>(field: string, value: number, min: number, max: number): Quantity<U> {
  if (!(value >= min && value <= max) || !Number.isFinite(value)) {
    throw new DomainError({
      code: Number.isNaN(value) ? "not-a-number" : "out-of-range",
      field,
      value,
      limits: { min, ...(max === Number.POSITIVE_INFINITY ? {} : { max }) },
    });
  }
  return value as Quantity<U>; // the one place where a plain number becomes a quantity
}

const zeroCelsius = 273.15;
export const kelvin = (x: number, field = "temperature"): Kelvin =>
  within(field, x, 0, Number.POSITIVE_INFINITY);
export const celsius = (x: number, field = "temperatureC"): Celsius =>
  within(field, x, -zeroCelsius, Number.POSITIVE_INFINITY);
export const kilogram = (x: number, field = "mass"): Kilogram =>
  within(field, x, 0, Number.POSITIVE_INFINITY);
export const cubicMetre = (x: number, field = "volume"): CubicMetre =>
  within(field, x, 0, Number.POSITIVE_INFINITY);
export const kilogramPerCubicMetre = (x: number, field = "density"): KilogramPerCubicMetre =>
  within(field, x, 0, Number.POSITIVE_INFINITY);
export const metre = (x: number, field = "length"): Metre => within(field, x, 0, Number.POSITIVE_INFINITY);
export const pascal = (x: number, field = "pressure"): Pascal =>
  within(field, x, 0, Number.POSITIVE_INFINITY);
export const massFraction = (x: number, field = "massFraction"): MassFraction => within(field, x, 0, 1);
export const volumeFraction = (x: number, field = "volumeFraction"): VolumeFraction => within(field, x, 0, 1);
export const cut = (x: number, field = "cut"): Cut => within(field, x, 0, Number.POSITIVE_INFINITY);

export const kelvinFromCelsius = (x: Celsius): Kelvin => kelvin(x + zeroCelsius);
export const celsiusFromKelvin = (x: Kelvin): Celsius => celsius(x - zeroCelsius);

/** Exact by definition: international avoirdupois pound (1959) and the US gallon of 231 cubic inches. Source: NIST Handbook 44, appendix C. */
export const poundKg = 0.45359237;
export const usGallonM3 = 231 * 0.0254 ** 3;
export const imperialGallonM3 = 4.54609e-3;

/** 1 lb per US gallon of solvent = 119.826 g a litre of solvent. */
export const cutFromPoundsPerUsGallon = (x: number, field = "cutLbPerGal"): Cut =>
  cut((x * poundKg) / usGallonM3, field);
export const poundsPerUsGallonFromCut = (x: Cut): number => (x * usGallonM3) / poundKg;
export const poundsPerImperialGallonFromCut = (x: Cut): number => (x * imperialGallonM3) / poundKg;

export const kilogramFromGrams = (x: number, field = "mass"): Kilogram => kilogram(x / 1e3, field);
export const gramsFromKilogram = (x: Kilogram): number => x * 1e3;
export const cubicMetreFromMillilitres = (x: number, field = "volume"): CubicMetre =>
  cubicMetre(x / 1e6, field);
export const millilitresFromCubicMetre = (x: CubicMetre): number => x * 1e6;
