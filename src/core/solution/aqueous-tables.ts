import type { Knot } from "./monotone-cubic.ts";

/** What a table of one alcohol with water at 20 °C holds: [mass fraction of the alcohol, density in kg/m³]. */
type Table = readonly Knot[];

/** Water at 20 °C, the first row of every table below. */
const water: Knot = [0, 998.2];

/**
 * Methanol with water at 20 °C. Standard uncertainty 0.3 kg/m³ (rounded to 0.1 by the source).
 * Source: CRC Handbook of Chemistry and Physics, 102nd ed., "Concentrative properties of aqueous solutions".
 */
export const methanolWater20C: Table = [
  water,
  [0.005, 997.3],
  [0.01, 996.4],
  [0.02, 994.7],
  [0.03, 993.0],
  [0.04, 991.3],
  [0.05, 989.6],
  [0.06, 988.0],
  [0.07, 986.4],
  [0.08, 984.8],
  [0.09, 983.2],
  [0.1, 981.6],
  [0.11, 980.1],
  [0.12, 978.5],
  [0.13, 977.0],
  [0.14, 975.5],
  [0.15, 974.0],
  [0.16, 972.5],
  [0.17, 971.0],
  [0.18, 969.5],
  [0.19, 968.0],
  [0.2, 966.6],
  [0.22, 963.6],
  [0.24, 960.6],
  [0.26, 957.6],
  [0.28, 954.5],
  [0.3, 951.4],
  [0.32, 948.2],
  [0.34, 945.0],
  [0.36, 941.6],
  [0.38, 938.2],
  [0.4, 934.7],
  [0.42, 931.1],
  [0.44, 927.3],
  [0.46, 923.5],
  [0.48, 919.6],
  [0.5, 915.6],
  [0.52, 911.4],
  [0.54, 907.2],
  [0.56, 903.0],
  [0.58, 898.7],
  [0.6, 894.4],
  [0.62, 890.1],
  [0.64, 885.6],
  [0.66, 881.0],
  [0.68, 876.3],
  [0.7, 871.5],
  [0.72, 866.7],
  [0.74, 861.8],
  [0.76, 856.8],
  [0.78, 851.8],
  [0.8, 846.8],
  [0.82, 841.6],
  [0.84, 836.5],
  [0.86, 831.2],
  [0.88, 825.9],
  [0.9, 820.4],
  [0.92, 814.8],
  [0.94, 808.9],
  [0.96, 803.4],
  [0.98, 797.6],
  [1.0, 791.7],
];

/**
 * 1-Propanol with water at 20 °C. Standard uncertainty 1 kg/m³: above 40 % the source has one row in twenty.
 * Source: as methanol.
 */
export const nPropanolWater20C: Table = [
  water,
  [0.01, 996.3],
  [0.02, 994.6],
  [0.03, 992.8],
  [0.04, 991.1],
  [0.05, 989.6],
  [0.06, 988.2],
  [0.07, 986.8],
  [0.08, 985.5],
  [0.09, 984.2],
  [0.1, 982.9],
  [0.12, 980.4],
  [0.14, 977.9],
  [0.16, 974.9],
  [0.18, 971.9],
  [0.2, 968.6],
  [0.24, 961.2],
  [0.28, 953.3],
  [0.32, 945.2],
  [0.36, 937.0],
  [0.4, 928.8],
  [0.6, 887.5],
  [0.8, 847.0],
  [1.0, 803.4],
];

/**
 * 2-Propanol with water at 20 °C, to 33 % by mass; above 40 % the excess volume of `isopropanol-water.ts` is
 * better than the source's one row in twenty.
 * Source: as methanol; the last row J. Am. Chem. Soc. 43 (1921) 1005.
 */
export const isopropanolWater20CWeak: Table = [
  water,
  [0.01, 996.0],
  [0.02, 993.9],
  [0.03, 992.0],
  [0.04, 990.2],
  [0.05, 988.4],
  [0.06, 987.1],
  [0.07, 985.5],
  [0.08, 984.3],
  [0.09, 983.1],
  [0.1, 981.6],
  [0.12, 979.3],
  [0.14, 977.2],
  [0.16, 975.1],
  [0.18, 972.5],
  [0.2, 969.6],
  [0.3317, 945.9],
];
