import type { Volatile } from "./volatiles.ts";

/** A group of atoms: volume, surface, and the main group that its interactions are known by. */
export interface GroupSize {
  readonly volume: number;
  readonly surface: number;
  readonly main: number;
}

/** How many of each group a molecule has. */
export type Groups = Readonly<Record<string, number>>;

export interface UnifacSet {
  readonly method: "modified UNIFAC (Dortmund)" | "original UNIFAC";
  readonly groups: Readonly<Record<string, GroupSize>>;
  readonly molecules: Readonly<Partial<Record<Volatile, Groups>>>;
  /** ψ = exp(−(a + b·T + c·T²)/T) between main groups, by `from-to`. */
  readonly interactions: Readonly<Record<string, readonly [a: number, b: number, c: number]>>;
  /** Power of the volume in the combinatorial part. */
  readonly volumePower: number;
}

const size = (volume: number, surface: number, main: number): GroupSize => ({ volume, surface, main });
const original = (a: number): readonly [number, number, number] => [a, 0, 0];

/** Source: Gmehling et al., as kept in an open thermodynamics library; main groups 1, 5, 6 and 7 only. */
export const dortmund: UnifacSet = {
  method: "modified UNIFAC (Dortmund)",
  volumePower: 0.75,
  groups: {
    CH3: size(0.6325, 1.0608, 1),
    CH2: size(0.6325, 0.7081, 1),
    CH: size(0.6325, 0.3554, 1),
    primaryOH: size(1.2302, 0.8927, 5),
    secondaryOH: size(1.063, 0.8663, 5),
    CH3OH: size(0.8585, 0.9938, 6),
    H2O: size(1.7334, 2.4561, 7),
  },
  molecules: {
    ethanol: { CH3: 1, CH2: 1, primaryOH: 1 },
    isopropanol: { CH3: 2, CH: 1, secondaryOH: 1 },
    "n-propanol": { CH3: 1, CH2: 2, primaryOH: 1 },
    methanol: { CH3OH: 1 },
    "n-butanol": { CH3: 1, CH2: 3, primaryOH: 1 },
    isobutanol: { CH3: 2, CH2: 1, CH: 1, primaryOH: 1 },
    "n-heptane": { CH3: 2, CH2: 5 },
    water: { H2O: 1 },
  },
  interactions: {
    "1-5": [2777, -4.674, 0.001551],
    "5-1": [1606, -4.746, 0.0009181],
    "1-6": [2409.4, -3.0099, 0],
    "6-1": [82.593, -0.4857, 0],
    "1-7": [1391.3, -3.6156, 0.001144],
    "7-1": [-17.253, 0.8389, 0.0009021],
    "5-6": [346.31, -2.4583, 0.002929],
    "6-5": [-1218.2, 9.7928, -0.01616],
    "5-7": [-801.9, 3.824, -0.007514],
    "7-5": [1460, -8.673, 0.01641],
    "6-7": [-328.5, 1.0823, -0.0022],
    "7-6": [-524.3, 4.6065, -0.004],
  },
};

/** Source: Fredenslund et al., as kept in an open thermodynamics library; with the ketone and ester groups. */
export const originalUnifac: UnifacSet = {
  method: "original UNIFAC",
  volumePower: 1,
  groups: {
    CH3: size(0.9011, 0.848, 1),
    CH2: size(0.6744, 0.54, 1),
    CH: size(0.4469, 0.228, 1),
    OH: size(1, 1.2, 5),
    CH3OH: size(1.4311, 1.432, 6),
    H2O: size(0.92, 1.4, 7),
    CH3CO: size(1.6724, 1.488, 9),
    CH3COO: size(1.9031, 1.728, 11),
  },
  molecules: {
    ethanol: { CH3: 1, CH2: 1, OH: 1 },
    isopropanol: { CH3: 2, CH: 1, OH: 1 },
    "n-propanol": { CH3: 1, CH2: 2, OH: 1 },
    methanol: { CH3OH: 1 },
    "n-butanol": { CH3: 1, CH2: 3, OH: 1 },
    isobutanol: { CH3: 2, CH2: 1, CH: 1, OH: 1 },
    acetone: { CH3: 1, CH3CO: 1 },
    mek: { CH3: 1, CH2: 1, CH3CO: 1 },
    mibk: { CH3: 2, CH2: 1, CH: 1, CH3CO: 1 },
    "ethyl-acetate": { CH3: 1, CH2: 1, CH3COO: 1 },
    "n-butyl-acetate": { CH3: 1, CH2: 3, CH3COO: 1 },
    "n-heptane": { CH3: 2, CH2: 5 },
    water: { H2O: 1 },
  },
  interactions: {
    "1-5": original(986.5),
    "5-1": original(156.4),
    "1-6": original(697.2),
    "6-1": original(16.51),
    "1-7": original(1318),
    "7-1": original(300),
    "5-6": original(-137.1),
    "6-5": original(249.1),
    "5-7": original(353.5),
    "7-5": original(-229.1),
    "6-7": original(-180.95),
    "7-6": original(289.6),
    "1-9": original(476.4),
    "9-1": original(26.76),
    "1-11": original(232.1),
    "11-1": original(114.8),
    "5-9": original(84),
    "9-5": original(164.5),
    "5-11": original(101.1),
    "11-5": original(245.4),
    "6-9": original(23.39),
    "9-6": original(108.65),
    "6-11": original(-10.72),
    "11-6": original(249.63),
    "7-9": original(-195.4),
    "9-7": original(472.5),
    "7-11": original(72.87),
    "11-7": original(200.8),
    "9-11": original(-213.7),
    "11-9": original(372.2),
  },
};
