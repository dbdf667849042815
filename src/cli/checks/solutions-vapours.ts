import { lnActivity } from "../../core/evaporation/activity.ts";
import { cabinetHeatShare, relativeEvaporationRate } from "../../core/evaporation/relative-rate.ts";
import { azeotrope, bubblePoint, vapourAbove } from "../../core/evaporation/vapour-liquid.ts";
import { boilingPoint, latentHeat, vapourPressure } from "../../core/evaporation/vapour-pressure.ts";
import { propertiesOf, type Volatile } from "../../core/evaporation/volatiles.ts";
import { publishedHazards } from "../../core/safety/published-hazards.ts";
import { celsius, celsiusFromKelvin, kelvinFromCelsius, massFraction, pascal } from "../../core/units.ts";
import { computedColumns, registered, saidWrong } from "./solutions-printed.ts";
import { numberIn, perRow } from "./table.ts";
import { type CheckCase, NotReadable, type Row, type TableAdapter, type Topic } from "./topic.ts";

const names: Readonly<Record<string, Volatile>> = {
  ethanol: "ethanol",
  methanol: "methanol",
  "2-propanol": "isopropanol",
  "1-propanol": "n-propanol",
  "1-butanol": "n-butanol",
  isobutanol: "isobutanol",
  "2-methyl-1-propanol": "isobutanol",
  acetone: "acetone",
  MEK: "mek",
  MIBK: "mibk",
  "ethyl acetate": "ethyl-acetate",
  "n-butyl acetate": "n-butyl-acetate",
  "n-heptane": "n-heptane",
  water: "water",
};

function named(name: string | undefined): Volatile {
  const found = names[name ?? ""];
  if (found === undefined) throw new NotReadable(`${name} is not a liquid that is known`);
  return found;
}

const at = (t: number) => kelvinFromCelsius(celsius(t));
const atmosphere = pascal(101_325);

const pressures = perRow({
  inputs: ["name"],
  expected: { psat_20C_dippr_kPa: ["rel", 0.02], psat_25C_dippr_kPa: ["rel", 0.02] },
  others: [...computedColumns, /^antoine_/, /^dippr101_/, /^psat_.*antoine/, "note"],
  id: (row) => row.name ?? "",
  shown: saidWrong,
  compute: (row) => ({
    psat_20C_dippr_kPa: vapourPressure(named(row.name), at(20)) / 1e3,
    psat_25C_dippr_kPa: vapourPressure(named(row.name), at(25)) / 1e3,
  }),
});

const pure = perRow({
  inputs: ["name"],
  expected: {
    normal_boiling_point_C: ["abs", 0.5],
    hvap_25C_kJ_mol: ["rel", 0.02],
    cp_liquid_25C_J_mol_K: ["rel", 0.03],
  },
  others: [
    ...computedColumns,
    "cas",
    "molar_mass_g_mol",
    /^density_/,
    "hvap_at_bp_kJ_mol",
    /^viscosity_/,
    "note",
  ],
  id: (row) => row.name ?? "",
  shown: saidWrong,
  compute: (row) => {
    const liquid = named(row.name);
    return {
      normal_boiling_point_C: celsiusFromKelvin(boilingPoint(liquid, atmosphere)),
      hvap_25C_kJ_mol: latentHeat(liquid, at(25)) / 1e3,
      cp_liquid_25C_J_mol_K: propertiesOf(liquid).heatCapacity,
    };
  },
});

const pairOf = (row: Row): [Volatile, Volatile] => {
  const [a, b] = (row.system ?? "").split("/");
  return [named(a), named(b)];
};
const mixed = (row: Row) => {
  const x = numberIn(row, "x1_liquid");
  return { components: pairOf(row), moleFractions: [x, 1 - x] };
};
const hasVapour = (row: Row): boolean => (row.y1_vapour ?? "").trim() !== "";
const pressureAt = (row: Row): number => vapourAbove(mixed(row), at(numberIn(row, "t_C"))).pressure / 1e3;

/** Pressures at one temperature are held together: their root mean square from the measured ones. */
const rmsPercent: Readonly<Record<string, number>> = { "30": 4, "50": 2 };

function togetherAt(t: string, rows: readonly Row[]): CheckCase {
  const most = rmsPercent[t];
  return {
    id: `P at ${t} °C, ${rows.length} rows together`,
    expected: { rms_percent: [0, most ?? 0] },
    tol: { rms_percent: ["inside", 0] },
    ...(most === undefined ? { shown: "no tolerance is stated at this temperature" } : {}),
    compute: () => {
      const squares = rows.map((row) => (pressureAt(row) / numberIn(row, "p_kPa") - 1) ** 2);
      return { rms_percent: 100 * Math.sqrt(squares.reduce((sum, s) => sum + s, 0) / rows.length) };
    },
  };
}

const singlePressure = (row: Row): CheckCase => ({
  id: `P of ${row.system} at ${row.t_C} °C, x ${row.x1_liquid}`,
  expected: { p_kPa: numberIn(row, "p_kPa") },
  tol: { p_kPa: ["any", 0] },
  shown: "held together with the others of its temperature",
  compute: () => ({ p_kPa: pressureAt(row) }),
});

const boiling = (row: Row): CheckCase => ({
  id: `boiling of ${row.system} at ${row.p_kPa} kPa, x ${row.x1_liquid}`,
  expected: { t_C: numberIn(row, "t_C"), y1_vapour: numberIn(row, "y1_vapour") },
  tol: { t_C: ["abs", 0.6], y1_vapour: ["abs", 0.03] },
  ...(Math.abs(numberIn(row, "p_kPa") - 101.3) <= 0.1 ? {} : { shown: "another pressure" }),
  compute: () => {
    const found = bubblePoint(mixed(row), pascal(numberIn(row, "p_kPa") * 1e3));
    return { t_C: celsiusFromKelvin(found.temperature), y1_vapour: found.vapourFractions[0] };
  },
});

const vapourLiquid: TableAdapter = {
  columns: ["system", "t_C", "p_kPa", "x1_liquid", "y1_vapour", "source", "note", ...computedColumns],
  needs: ["system", "t_C", "p_kPa", "x1_liquid"],
  cases: (rows) => {
    const compared = rows.filter((row) => saidWrong(row) === undefined);
    const isothermal = compared.filter((row) => !hasVapour(row));
    const temperatures = [...new Set(isothermal.map((row) => String(numberIn(row, "t_C"))))];
    const sets = temperatures.map((t) =>
      togetherAt(
        t,
        isothermal.filter((row) => String(numberIn(row, "t_C")) === t),
      ),
    );
    return [...sets, ...isothermal.map(singlePressure), ...compared.filter(hasVapour).map(boiling)];
  },
};

const azeotropes = perRow({
  inputs: ["system", "p_kPa"],
  expected: { azeotrope_mass_percent_alcohol: ["abs", 1], t_C: ["abs", 0.5] },
  others: [...computedColumns, "azeotrope_mole_fraction", "source", "note"],
  shown: saidWrong,
  compute: (row) => {
    const found = azeotrope(pairOf(row), pascal(numberIn(row, "p_kPa") * 1e3));
    if (found === undefined) throw new Error("no azeotrope was found");
    return {
      azeotrope_mass_percent_alcohol: 100 * found.massFraction,
      t_C: celsiusFromKelvin(found.temperature),
    };
  },
});

/** A case in which what is computed has to lie between two numbers. */
const between = (id: string, quantity: string, range: readonly [number, number], compute: () => number) => ({
  id,
  expected: { [quantity]: range },
  tol: { [quantity]: ["inside", 0] as const },
  compute: () => ({ [quantity]: compute() }),
});

const infiniteDilution: TableAdapter = {
  columns: [
    "solute_in_water",
    "gamma_inf_from_henry",
    "henry_constant_kPa",
    "mod_dortmund_unifac",
    "original_unifac",
    "wilson_1atm_extrapolated",
    "literature_range_from_memory",
    "note",
    ...computedColumns,
  ],
  needs: ["solute_in_water", "gamma_inf_from_henry"],
  cases: (rows) =>
    rows.map((row) => {
      const henry = numberIn(row, "gamma_inf_from_henry");
      const few = 1e-8;
      return between(row.solute_in_water ?? "", "gamma_inf", [0.7 * henry, 1.5 * henry], () =>
        Math.exp(lnActivity([named(row.solute_in_water), "water"], [few, 1 - few], at(25))[0] ?? Number.NaN),
      );
    }),
};

/** As the lists of solvents name them. */
function tested(solvent: string) {
  if (solvent === "ethanol anhydrous") return { ethanol: massFraction(1) };
  if (solvent === "ethanol 95%") {
    const strength = registered("alcohol-strength", { alcohol: "ethanol", volumeFraction: 0.95 });
    const share = strength.massFraction as number;
    return { ethanol: massFraction(share), water: massFraction(1 - share) };
  }
  return { [named(solvent)]: massFraction(1) };
}

/** Printed beside the rates, since they all rest on it. */
const cabinet: CheckCase = {
  id: "heat from the test's cabinet, for as much from its air",
  expected: { share: cabinetHeatShare },
  tol: { share: ["any", 0] },
  shown: "the one figure that is fitted, to all of these together",
  compute: () => ({ share: cabinetHeatShare }),
};

const rates: TableAdapter = {
  columns: ["solvent", "low", "high", "central", "note", ...computedColumns],
  needs: ["solvent", "low", "high"],
  cases: (rows) => [
    ...rows.map((row) =>
      between(
        row.solvent ?? "",
        "relative_rate",
        [numberIn(row, "low") / 1.25, numberIn(row, "high") * 1.25],
        () => relativeEvaporationRate(tested(row.solvent ?? "")),
      ),
    ),
    cabinet,
  ],
};

const flashPoints = perRow({
  inputs: ["alcohol", "percent"],
  expected: { flash_point_C: ["abs", 4] },
  others: [...computedColumns, "basis", "source", "note"],
  shown: saidWrong,
  compute: (row) => ({
    flash_point_C: registered("flash-point", {
      solvent: { alcohol: named(row.alcohol), volumeFraction: numberIn(row, "percent") / 100 },
    }).flashPointC,
  }),
});

const exact = ["exact", 0] as const;
const exposure = perRow({
  inputs: ["name"],
  expected: {
    flash_point_iec_C: exact,
    flash_point_nfpa_C: exact,
    lfl_iec_vol_percent: exact,
    ufl_iec_vol_percent: exact,
    lfl_nfpa_vol_percent: exact,
    ufl_nfpa_vol_percent: exact,
    autoignition_iec_C: exact,
    autoignition_nfpa_C: exact,
    osha_pel_twa_ppm: exact,
    niosh_rel_twa_ppm: exact,
    niosh_rel_st_ppm: exact,
    niosh_ceiling_ppm: exact,
    idlh_ppm: exact,
  },
  others: ["skin_notation", "idlh_note", "exposure_limit_source", "note"],
  id: (row) => row.name ?? "",
  shown: saidWrong,
  compute: (row) => {
    const liquid = named(row.name);
    const found = publishedHazards.find((h) => h.component === liquid);
    if (found === undefined) throw new Error(`nothing is known of ${row.name}`);
    return {
      flash_point_iec_C: found.flashPointC.iec,
      flash_point_nfpa_C: found.flashPointC.nfpa,
      lfl_iec_vol_percent: found.lowerPercent.iec,
      ufl_iec_vol_percent: found.upperPercent.iec,
      lfl_nfpa_vol_percent: found.lowerPercent.nfpa,
      ufl_nfpa_vol_percent: found.upperPercent.nfpa,
      autoignition_iec_C: found.autoignitionC.iec,
      autoignition_nfpa_C: found.autoignitionC.nfpa,
      osha_pel_twa_ppm: found.oshaPpm,
      niosh_rel_twa_ppm: found.nioshPpm.day,
      niosh_rel_st_ppm: found.nioshPpm.short,
      niosh_ceiling_ppm: found.nioshPpm.ceiling,
      idlh_ppm: found.dangerousPpm,
    };
  },
});

export const topic: Topic = {
  tables: {
    "vapor_pressure.csv": pressures,
    "pure_components.csv": pure,
    "vle_points.csv": vapourLiquid,
    "azeotropes.csv": azeotropes,
    "infinite_dilution_activity_25C.csv": infiniteDilution,
    "relative_evaporation_rates_spread.csv": rates,
    "flash_points_aqueous.csv": flashPoints,
    "flammability_exposure.csv": exposure,
  },
  notCompared: [
    "diffusion_in_air.csv",
    "evaporation_theory_ratios.csv",
    "flash_points_model_only.csv",
    "relative_evaporation_rates.csv",
  ],
};
