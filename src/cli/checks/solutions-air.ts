import { dewPoint } from "../../core/air/dew-point.ts";
import {
  humidityRatio,
  humidityRatioFromWetBulb,
  moistAirEnthalpy,
  moistAirVolume,
  standardAtmosphere,
  vapourPressureFromHumidityRatio,
} from "../../core/air/moist-air.ts";
import { waterSaturationPressure } from "../../core/air/saturation-pressure.ts";
import {
  cubicMetresPerCubicFoot,
  dilutionForFire,
  dilutionForHealth,
} from "../../core/safety/ventilation.ts";
import { celsius, celsiusFromKelvin, type Kelvin, kelvinFromCelsius, pascal } from "../../core/units.ts";
import { shrinkageOf } from "../../core/wood/shrinkage.ts";
import { onlyFields } from "./solutions-gauging.ts";
import { computedColumns, registered, saidWrong } from "./solutions-printed.ts";
import { numberIn, perRow } from "./table.ts";
import { type Json, type KindAdapter, NotReadable, type Topic } from "./topic.ts";

const at = (t: number): Kelvin => kelvinFromCelsius(celsius(t));

/** The numbers of a case's input, by name; one that says more or less is not read. */
function numbersOf(given: Json, names: readonly string[]): Readonly<Record<string, number>> {
  const input = given.input as Json;
  onlyFields(input, names);
  for (const name of names)
    if (typeof input[name] !== "number") throw new NotReadable(`${name} is not a number`);
  return input as Readonly<Record<string, number>>;
}

const kind =
  (names: readonly string[], compute: (...given: number[]) => Json): KindAdapter =>
  (given) => {
    const input = numbersOf(given, names);
    return compute(...names.map((name) => input[name] as number));
  };

const saturation = kind(["t_C"], (t) => ({ p_Pa: waterSaturationPressure(at(t as number)) }));

const saturationRatio = kind(["t_C", "p_Pa"], (t, p) => ({
  humidity_ratio: humidityRatio(waterSaturationPressure(at(t as number)), pascal(p as number)),
}));

function moistAir(given: Json): Json {
  const input = numbersOf(given, ["dry_bulb_C", "wet_bulb_C", "p_Pa"]);
  const [dry, wet] = [at(input.dry_bulb_C as number), at(input.wet_bulb_C as number)];
  const pressure = pascal(input.p_Pa as number);
  const ratio = humidityRatioFromWetBulb(dry, wet, pressure);
  const rh = vapourPressureFromHumidityRatio(ratio, pressure) / waterSaturationPressure(dry);
  return {
    humidity_ratio: ratio,
    dew_point_C: celsiusFromKelvin(dewPoint(dry, rh)),
    rh,
    enthalpy_kJ_kg: moistAirEnthalpy(dry, ratio),
    volume_m3_kg: moistAirVolume(dry, ratio, pressure),
  };
}

const dew = kind(["t_C", "rh"], (temperatureC, relativeHumidity) => ({
  dew_point_C: registered("dew-point", { temperatureC, relativeHumidity }).dewPointC,
}));

const atmosphere = kind(["altitude_m"], (z) => ({ p_Pa: standardAtmosphere(z as number) }));

const liquidOf = (input: Readonly<Record<string, number>>) => ({
  specificGravity: input.sg as number,
  molarMass: input.molar_mass as number,
  pintPerMinute: input.pint_per_min as number,
});

function forHealth(given: Json): Json {
  const input = numbersOf(given, ["sg", "molar_mass", "pint_per_min", "limit_ppm", "K"]);
  const cfm = dilutionForHealth(liquidOf(input), input.limit_ppm as number, input.K as number);
  return {
    Q_cfm: cfm,
    Q_prime_cfm: cfm / (input.K as number),
    Q_L_min: cfm * cubicMetresPerCubicFoot * 1e3,
  };
}

function forFire(given: Json): Json {
  const input = numbersOf(given, ["sg", "molar_mass", "pint_per_min", "lel_percent", "Sf", "B", "t_F"]);
  const flow = (fahrenheit: number): number =>
    dilutionForFire(
      liquidOf(input),
      input.lel_percent as number,
      input.Sf as number,
      input.B as number,
      fahrenheit,
    );
  return { Q_cfm_at_70F: flow(70), Q_cfm: flow(input.t_F as number) };
}

const moisture = perRow({
  inputs: ["t_C", "rh_percent"],
  expected: { emc_percent_reference: ["abs", 0.1] },
  others: [...computedColumns, "source", "note"],
  shown: saidWrong,
  compute: (row) => ({
    emc_percent_reference: registered("wood-moisture", {
      temperatureC: numberIn(row, "t_C"),
      relativeHumidity: numberIn(row, "rh_percent") / 100,
    }).moisturePercent,
  }),
});

const shrinkage = perRow({
  inputs: ["species"],
  expected: {
    radial_percent: ["exact", 0],
    tangential_percent: ["exact", 0],
    volumetric_percent: ["exact", 0],
    CR_per_percent_mc: ["exact", 0],
    CT_per_percent_mc: ["exact", 0],
  },
  others: ["source", "note"],
  id: (row) => row.species ?? "",
  shown: saidWrong,
  compute: (row) => {
    const wood = shrinkageOf(row.species ?? "");
    if (wood === undefined) throw new Error(`${row.species} is not a wood that is known`);
    return {
      radial_percent: wood.radialPercent,
      tangential_percent: wood.tangentialPercent,
      volumetric_percent: wood.volumetricPercent,
      CR_per_percent_mc: wood.radialCoefficient,
      CT_per_percent_mc: wood.tangentialCoefficient,
    };
  },
});

export const topic: Topic = {
  kinds: {
    "saturation-pressure": saturation,
    "saturation-humidity-ratio": saturationRatio,
    "moist-air": moistAir,
    "dew-point": dew,
    "standard-atmosphere": atmosphere,
    "ventilation-health": forHealth,
    "ventilation-fire": forFire,
  },
  tables: {
    "wood_emc_check.csv": moisture,
    "wood_shrinkage.csv": shrinkage,
  },
};
