import type { Component } from "../../core/solution/component.ts";
import { aqueous } from "../../core/solution/composition.ts";
import { strengthAt60F, volumeFractionFromMassFraction } from "../../core/solution/strength.ts";
import { celsius, type Kelvin, kelvinFromCelsius, massFraction } from "../../core/units.ts";
import {
  alcoholDenatured,
  alcoholGauge,
  alcoholMixture,
  alcoholReduce,
  alcoholStrength,
  gravityInAir,
} from "./solutions-gauging.ts";
import {
  computedColumns,
  densityGCm3,
  percentFrom,
  registered,
  saidWrong,
  sixtyF,
} from "./solutions-printed.ts";
import { numberIn, perRow } from "./table.ts";
import type { TableAdapter, Topic } from "./topic.ts";

const components: Readonly<Record<string, Component>> = {
  methanol: "methanol",
  ethanol: "ethanol",
  "1-propanol": "n-propanol",
  "2-propanol": "isopropanol",
};
const at = (t: number): Kelvin => kelvinFromCelsius(celsius(t));

const oiml = perRow({
  inputs: ["fraction_basis", "ethanol_fraction", "t_C"],
  expected: { density_ref_kg_m3: (row) => ["abs", numberIn(row, "tolerance_kg_m3")] },
  others: [...computedColumns, "residual_kg_m3", "source", "tolerance_kg_m3", "note"],
  shown: saidWrong,
  compute: (row) => {
    const fraction = numberIn(row, "ethanol_fraction");
    const strength =
      row.fraction_basis === "mass"
        ? { massFraction: fraction }
        : { volumeFraction: fraction, atTemperatureC: 20 };
    const input = { alcohol: "ethanol", ...strength, temperatureC: numberIn(row, "t_C") };
    return { density_ref_kg_m3: registered("alcohol-density", input).densityKgM3 };
  },
});

const nbsTemperatures = [10, 15, 20, 25, 30, 35, 40];
const nbs = perRow({
  inputs: ["ethanol_mass_percent"],
  expected: Object.fromEntries(nbsTemperatures.map((t) => [`density_${t}C_g_cm3`, ["abs", 0.00015]])),
  others: [...computedColumns, "note"],
  shown: saidWrong,
  compute: (row) =>
    Object.fromEntries(
      nbsTemperatures.map((t) => [
        `density_${t}C_g_cm3`,
        densityGCm3("ethanol", numberIn(row, "ethanol_mass_percent"), t),
      ]),
    ),
});

const gravities = (percent: number, suffix: string): Record<string, number> => {
  const composition = aqueous("ethanol", massFraction(percent / 100));
  return {
    [`sg_air_25_25${suffix}`]: gravityInAir(composition, at(25)),
    [`sg_air_60F_60F${suffix}`]: gravityInAir(composition, strengthAt60F),
  };
};

/** Two tables side by side; either half of a row may be empty. */
const usp = perRow({
  inputs: ["vol_percent_60F", "mass_percent_b"],
  expected: {
    mass_percent: ["abs", 0.02],
    sg_air_25_25: ["abs", 0.0002],
    sg_air_60F_60F: ["abs", 0.0002],
    vol_percent_60F_b: ["abs", 0.02],
    sg_air_25_25_b: ["abs", 0.0002],
    sg_air_60F_60F_b: ["abs", 0.0002],
  },
  others: [...computedColumns, "note"],
  shown: saidWrong,
  compute: (row) => {
    const given = (column: string): boolean => (row[column] ?? "").trim() !== "";
    const percent = given("vol_percent_60F")
      ? percentFrom("ethanol", numberIn(row, "vol_percent_60F"), sixtyF)
      : undefined;
    const percentB = given("mass_percent_b") ? numberIn(row, "mass_percent_b") : undefined;
    return {
      ...(percent === undefined ? {} : { mass_percent: percent, ...gravities(percent, "") }),
      ...(percentB === undefined
        ? {}
        : {
            vol_percent_60F_b:
              100 * volumeFractionFromMassFraction("ethanol", massFraction(percentB / 100), strengthAt60F),
            ...gravities(percentB, "_b"),
          }),
    };
  },
});

const dilution = perRow({
  inputs: ["start_vol_percent", "target_vol_percent"],
  expected: {
    water_volumes_per_100_printed: (row) => [
      "abs",
      numberIn(row, "water_volumes_per_100_printed") < 100 ? 0.15 : 0.5,
    ],
  },
  others: [...computedColumns, "note", "source"],
  shown: saidWrong,
  compute: (row) => {
    const label = (column: string) => ({
      volumeFraction: numberIn(row, column) / 100,
      atTemperatureC: sixtyF,
    });
    const blend = registered("alcohol-blend", {
      parts: [{ alcohol: "ethanol", ...label("start_vol_percent"), volumeMl: 100 }, { alcohol: "water" }],
      to: label("target_vol_percent"),
      temperatureC: sixtyF,
    });
    return { water_volumes_per_100_printed: (blend.parts as { volumeMl: number }[])[1]?.volumeMl };
  },
});

const crc = perRow({
  inputs: ["alcohol", "mass_percent"],
  expected: {
    density_20C_g_cm3: (row) => ["abs", /propanol/.test(row.alcohol ?? "") ? 0.0015 : 0.0005],
  },
  others: [...computedColumns, "viscosity_20C_mPa_s", "note"],
  shown: saidWrong,
  compute: (row) => {
    const alcohol = components[row.alcohol ?? ""];
    if (alcohol === undefined) throw new Error(`${row.alcohol} is not a liquid that is known`);
    return { density_20C_g_cm3: densityGCm3(alcohol, numberIn(row, "mass_percent"), 20) };
  },
});

const isopropanol1921 = perRow({
  inputs: ["ipa_mass_percent"],
  expected: { density_20C_g_cm3: ["abs", 0.0015] },
  others: [...computedColumns, "note"],
  shown: saidWrong,
  compute: (row) => ({
    density_20C_g_cm3: densityGCm3("isopropanol", numberIn(row, "ipa_mass_percent"), 20),
  }),
});

/** A window of strengths against one of specific gravities, crosswise; or a strength by volume and by mass. */
const pharmacopoeia = perRow({
  inputs: ["vol_percent_low", "vol_percent_high"],
  expected: {
    sg_low: (row) => ["abs", numberIn(row, "tolerance")],
    sg_high: (row) => ["abs", numberIn(row, "tolerance")],
    mass_percent: (row) => ["abs", numberIn(row, "tolerance")],
  },
  others: [
    ...computedColumns,
    "material",
    "sg_t_C",
    "sg_water_t_C",
    "tolerance",
    "sg_basis",
    "source",
    "note",
  ],
  id: (row) => row.material ?? "",
  shown: saidWrong,
  compute: (row) => {
    const percentAt = (column: string): number => percentFrom("isopropanol", numberIn(row, column), 20);
    if ((row.sg_t_C ?? "").trim() === "") return { mass_percent: percentAt("vol_percent_low") };
    const [t, tWater] = [numberIn(row, "sg_t_C"), numberIn(row, "sg_water_t_C")];
    const gravity = (column: string): number =>
      densityGCm3("isopropanol", percentAt(column), t) / densityGCm3("water", 0, tWater);
    return {
      sg_high: gravity("vol_percent_low"),
      sg_low: gravity("vol_percent_high"),
      mass_percent: percentAt("vol_percent_low"),
    };
  },
});

const volumeToMass = (alcohol: Component, tolerance: number): TableAdapter =>
  perRow({
    inputs: ["vol_percent_20C"],
    expected: { mass_percent: ["abs", tolerance] },
    others: [...computedColumns, "density_20C_g_cm3", "sg_20_20", "note"],
    shown: saidWrong,
    compute: (row) => ({ mass_percent: percentFrom(alcohol, numberIn(row, "vol_percent_20C"), 20) }),
  });

const ethanolVolumeToMass = perRow({
  inputs: ["vol_percent"],
  expected: { mass_percent_20C_basis: ["abs", 0.01], mass_percent_60F_basis: ["abs", 0.01] },
  others: [...computedColumns, "us_proof", /^density_/, "note"],
  shown: saidWrong,
  compute: (row) => ({
    mass_percent_20C_basis: percentFrom("ethanol", numberIn(row, "vol_percent"), 20),
    mass_percent_60F_basis: percentFrom("ethanol", numberIn(row, "vol_percent"), sixtyF),
  }),
});

const ethanol95 = { alcohol: "ethanol", volumeFraction: 0.95 } as const;

const reduction = perRow({
  inputs: ["from_cut_lb_gal", "to_cut_lb_gal"],
  expected: { parts_alcohol_per_part_printed: ["rel", 0.12] },
  others: [...computedColumns, /_balance/, "note", "source"],
  shown: saidWrong,
  compute: (row) => {
    const thinned = registered("thin", {
      stock: { solutionMl: 100, cutLbPerGal: numberIn(row, "from_cut_lb_gal"), solvent: ethanol95 },
      toCutLbPerGal: numberIn(row, "to_cut_lb_gal"),
      with: ethanol95,
    });
    return { parts_alcohol_per_part_printed: (thinned.addMl as number) / 100 };
  },
});

/** The standard states a least content of what does not evaporate; dry resin makes more than that, by 4 points at most. */
const nonvolatile: TableAdapter = {
  columns: [
    "body",
    "cut_lb_per_us_gal",
    "min_nonvolatile_orange_percent",
    "min_nonvolatile_bleached_percent",
    /^nominal_solids/,
    "ratio_orange_to_nominal",
    "note",
  ],
  needs: ["cut_lb_per_us_gal", "min_nonvolatile_orange_percent"],
  cases: (rows) =>
    rows.map((row) => {
      const least = numberIn(row, "min_nonvolatile_orange_percent");
      return {
        id: `${row.body ?? ""} ${row.cut_lb_per_us_gal} lb`,
        expected: { solids_percent: [least, least + 4] },
        tol: { solids_percent: ["inside", 0] },
        compute: () => {
          const cutLbPerGal = numberIn(row, "cut_lb_per_us_gal");
          const solvent = { alcohol: "ethanol", usProof: 190 };
          const mixed = registered("mix", { resinG: 100, cutLbPerGal, solvent });
          return { solids_percent: 100 * (mixed.massFractionResin as number) };
        },
      };
    }),
};

export const topic: Topic = {
  kinds: {
    "alcohol-gauge": alcoholGauge,
    "alcohol-reduce": alcoholReduce,
    "alcohol-denatured": alcoholDenatured,
    "alcohol-mixture": alcoholMixture,
    "alcohol-strength": alcoholStrength,
  },
  tables: {
    "oiml_r22_check_values.csv": oiml,
    "ethanol_water_density_nbs.csv": nbs,
    "ethanol_usp_alcoholometric.csv": usp,
    "ethanol_dilution_volumes.csv": dilution,
    "aqueous_alcohol_20C_crc.csv": crc,
    "ipa_water_density_20C_1921.csv": isopropanol1921,
    "ipa_pharmacopoeia_checks.csv": pharmacopoeia,
    "ipa_vol_mass_percent_20C.csv": volumeToMass("isopropanol", 0.3),
    "methanol_vol_mass_percent_20C.csv": volumeToMass("methanol", 0.1),
    "ethanol_vol_mass_percent.csv": ethanolVolumeToMass,
    "shellac_d360_nonvolatile.csv": nonvolatile,
    "shellac_cut_reduction.csv": reduction,
  },
  notCompared: [
    "denatured_alcohol_formulas.csv",
    "hansen_parameters.csv",
    "shellac_properties.csv",
    "verification_residuals.csv",
  ],
};
