import type { Component } from "../solution/component.ts";

/** The liquids whose evaporation is known; what a data sheet leaves unnamed is not among them. */
export type Volatile = Exclude<Component, "unknown">;

/** What the physics of evaporation needs of one liquid. */
export interface VolatileProperties {
  /** kg/mol. */
  readonly molarMass: number;
  /** DIPPR equation 101, ln Pa = c1 + c2/T + c3·ln T + c4·T^c5. */
  readonly dippr: readonly [number, number, number, number, number];
  /** log10 Pa = a − b/(T + c), between two temperatures [K]: for boiling, which it meets more closely. */
  readonly antoine: readonly [a: number, b: number, c: number, from: number, to: number];
  /** Normal boiling point [K], as printed: the second anchor of the latent heat. */
  readonly boilingPoint: number;
  /** J/mol. */
  readonly latentHeatAtBoiling: number;
  readonly latentHeatAt25C: number;
  /** Liquid at 25 °C, J/(mol·K). */
  readonly heatCapacity: number;
  /** In air at 25 °C and one atmosphere, m²/s. */
  readonly diffusivity: number;
}

type Row = readonly [
  name: Volatile,
  gramsPerMol: number,
  dippr: VolatileProperties["dippr"],
  antoine: VolatileProperties["antoine"],
  boilingC: number,
  atBoilingKj: number,
  at25CKj: number,
  heatCapacity: number,
  diffusivityCm2: number,
];

/**
 * Vapour pressures: Perry's Chemical Engineers' Handbook, table 2-8 (DIPPR 101); Poling, Prausnitz, O'Connell, 5th ed.
 * (Antoine). Isobutanol's 101 is fitted, within 0.4 % from −18 to 130 °C, to the Wagner equation of the VDI Heat Atlas.
 * Boiling point, latent heat, heat capacity: CRC Handbook, 102nd ed.; isobutanol's the same. Diffusivity in air:
 * Fuller's equation (from memory), within 8 % of Perry's table 2-324 but for acetone, measured 20 % higher.
 */
const rows = [
  [
    "ethanol",
    46.069,
    [73.304, -7122.3, -7.1424, 2.8853e-6, 2],
    [10.33675, 1648.22, -42.232, 276.5, 369.54],
    78.29,
    38.56,
    42.32,
    112.3,
    0.1225,
  ],
  [
    "methanol",
    32.042,
    [82.718, -6904.5, -8.8622, 7.4664e-6, 2],
    [10.20277, 1580.08, -33.65, 262.59, 356],
    64.6,
    35.21,
    37.43,
    81.1,
    0.1599,
  ],
  [
    "isopropanol",
    60.096,
    [96.094, -8575.4, -10.292, 1.6665e-17, 6],
    [10.24268, 1580.92, -53.54, 281.28, 373.46],
    82.3,
    39.85,
    45.39,
    156.5,
    0.1024,
  ],
  [
    "n-propanol",
    60.096,
    [84.6642, -8307.2, -8.5767, 7.5091e-18, 6],
    [9.99991, 1512.94, -67.343, 293.19, 389.32],
    97.2,
    41.44,
    47.45,
    143.9,
    0.1024,
  ],
  [
    "n-butanol",
    74.123,
    [106.295, -9866.4, -11.655, 1.0832e-17, 6],
    [9.6493, 1395.14, -90.411, 310.18, 411.26],
    117.73,
    43.29,
    52.35,
    177.2,
    0.0895,
  ],
  [
    "isobutanol",
    74.123,
    [159.963638, -12219.6446, -19.6214684, 7.8428456e-17, 6],
    [9.34504, 1190.38, -106.48, 303.4, 400.84],
    107.89,
    41.82,
    50.82,
    181.5,
    0.0895,
  ],
  [
    "acetone",
    58.08,
    [69.006, -5599.6, -7.0985, 6.2237e-6, 2],
    [9.2184, 1197.01, -45.09, 247.38, 350.65],
    56.05,
    29.1,
    30.99,
    126.3,
    0.1058,
  ],
  [
    "mek",
    72.107,
    [72.698, -6143.6, -7.5779, 5.6476e-6, 2],
    [9.1386, 1232.63, -54.46, 265.62, 375.66],
    79.59,
    31.3,
    34.79,
    158.7,
    0.0918,
  ],
  [
    "mibk",
    100.161,
    [80.503, -7421.8, -8.379, 1.8114e-17, 6],
    [8.8222, 1190.6904, -77.7, 293.4, 415.85],
    116.5,
    34.49,
    40.61,
    213.3,
    0.0749,
  ],
  [
    "ethyl-acetate",
    88.106,
    [66.824, -6227.6, -6.41, 1.7914e-17, 6],
    [9.13361, 1195.13, -60.68, 265.5, 372.51],
    77.11,
    31.94,
    35.6,
    170.7,
    0.0869,
  ],
  [
    "n-butyl-acetate",
    116.16,
    [122.82, -9253.2, -14.99, 1.047e-5, 2],
    [9.5, 1596.7, -43.85, 301, 424.11],
    126.1,
    36.28,
    43.86,
    227.8,
    0.0722,
  ],
  [
    "n-heptane",
    100.205,
    [87.829, -6996.4, -9.8802, 7.2099e-6, 2],
    [9.02023, 1263.909, -56.718, 277.71, 396.53],
    98.4,
    31.77,
    36.57,
    224.7,
    0.0705,
  ],
  [
    "water",
    18.0153,
    [73.649, -7258.2, -7.3037, 4.1653e-6, 2],
    [10.11564, 1687.537, -42.98, 273.2, 473.2],
    99.97,
    40.65,
    43.98,
    75.3,
    0.2504,
  ],
] as const satisfies readonly Row[];

const table: ReadonlyMap<Volatile, VolatileProperties> = new Map(
  (rows as readonly Row[]).map(([name, grams, dippr, antoine, boiling, hot, cool, heat, diffusivity]) => [
    name,
    {
      molarMass: grams / 1e3,
      dippr,
      antoine,
      boilingPoint: boiling + 273.15,
      latentHeatAtBoiling: hot * 1e3,
      latentHeatAt25C: cool * 1e3,
      heatCapacity: heat,
      diffusivity: diffusivity / 1e4,
    },
  ]),
);

export const volatiles: readonly Volatile[] = rows.map(([name]) => name);

/**
 * What the physics of evaporation needs of one liquid.
 *
 * @param component  its name
 * @returns          molar mass [kg/mol], curves of the vapour pressure, heats [J/mol], diffusivity [m²/s]
 *
 * Valid:    every component but `unknown`
 * Accuracy: latent heat 1 %, heat capacity 2 %, diffusivity 8 %
 * Source:   as printed above the table: Perry, Poling, CRC; diffusivity by Fuller's equation, from memory
 * @example
 * propertiesOf("ethanol").molarMass // => 0.046069
 */
export const propertiesOf = (component: Volatile): VolatileProperties =>
  table.get(component) as VolatileProperties; // every Volatile has a row: the test counts them
