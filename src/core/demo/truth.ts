/** What is really so in the invented shop: what the trial is to find, but for the noise. All of it made up. */
export interface DemoTruth {
  /** Gloss units above ethanol's, by alcohol. */
  readonly gloss: Readonly<Record<DemoAlcohol, number>>;
  /** Gloss units that the stronger cut adds. */
  readonly glossOfStrongerCut: number;
}

export const demoAlcohols = ["ethanol", "isopropanol", "denatured"] as const;
export type DemoAlcohol = (typeof demoAlcohols)[number];
export const demoCuts = ["1 lb", "1½ lb"] as const;
export type DemoCut = (typeof demoCuts)[number];
export const demoWoods = ["cherry", "ash", "birch"] as const;

/** Gloss counts from this difference on; the trial asks with it. Common practice. */
export const glossThatMatters = 5;

/**
 * The cut is real. Denatured alcohol is as good as ethanol. Isopropanol lies just where this trial cannot tell: its
 * difference is about as large as what matters.
 */
export const demoTruth: DemoTruth = {
  gloss: { ethanol: 0, isopropanol: 5, denatured: 0.2 },
  glossOfStrongerCut: 12,
};

/** Standard deviations: between planks, between two stocks of one alcohol, between patches, of one reading. */
export const demoNoise = { plank: 1.5, stock: 0.45, patch: 0.7, reading: 0.6 } as const;
/** Gloss of one pound of ethanol on each wood. */
export const demoGlossOfWood: Readonly<Record<string, number>> = { cherry: 47, ash: 38, birch: 43 };
/** Hours until half of the jars are ready, by alcohol. */
export const demoReadyH: Readonly<Record<DemoAlcohol, number>> = {
  ethanol: 7.5,
  isopropanol: 14,
  denatured: 9.5,
};
