import type { Topic } from "./topic.ts";

/** Who printed each table that is compared. */
export const topic: Topic = {
  sources: {
    "oiml_r22_check_values.csv": "OIML R 22 (1975), cells of its tables",
    "ethanol_water_density_nbs.csv": "NBS Bulletin 9, density grid",
    "ethanol_usp_alcoholometric.csv": "USP 29, alcoholometric table",
    "ethanol_dilution_volumes.csv": "printed table of dilution by volume",
    "aqueous_alcohol_20C_crc.csv": "CRC Handbook, 102nd ed., concentrative properties",
    "ipa_water_density_20C_1921.csv": "J. Am. Chem. Soc. 43 (1921) 1005",
    "ipa_pharmacopoeia_checks.csv": "USP 32 and pharmacopoeia windows for isopropanol",
    "ipa_vol_mass_percent_20C.csv": "a fit to the 1921 points by another hand",
    "methanol_vol_mass_percent_20C.csv": "the CRC table, interpolated by another hand",
    "ethanol_vol_mass_percent.csv": "R 22, computed by another hand",
    "ethanol_us_proof_checks.json": "27 CFR 30.11, 30.41, 30.64, 21.161",
    "vapor_pressure.csv": "Perry, table 2-8",
    "pure_components.csv": "CRC Handbook, 102nd ed.",
    "vle_points.csv": "printed vapour–liquid measurements",
    "azeotropes.csv": "printed azeotropes",
    "infinite_dilution_activity_25C.csv": "Henry constants (Sander's compilation)",
    "flash_points_aqueous.csv": "a printed list of flash points",
    "flammability_exposure.csv": "IEC 60079-20-1, NFPA 497, NIOSH, OSHA",
    "shellac_d360_nonvolatile.csv": "ASTM D360-89, section 6",
    "shellac_cut_reduction.csv": "a printed reduction table of the trade",
    "wood_emc_check.csv": "Wood Handbook, table 4-2",
    "wood_shrinkage.csv": "Wood Handbook, tables 4-3, 4-4, 13-5",
  },
};
