/** How much a wood shrinks from green to oven-dry, and how much it moves between. */
export interface Shrinkage {
  readonly species: string;
  /** Percent of the green size. */
  readonly radialPercent: number;
  readonly tangentialPercent: number;
  readonly volumetricPercent: number;
  /** Change of size to a size, for each percent of moisture; null where none is printed. */
  readonly radialCoefficient: number | null;
  readonly tangentialCoefficient: number | null;
  readonly seen: "document" | "from memory";
}

type Row = readonly [
  species: string,
  radial: number,
  tangential: number,
  volumetric: number,
  radialCoefficient: number | null,
  tangentialCoefficient: number | null,
  seen?: "from memory",
];

/** USDA Wood Handbook (FPL-GTR-282), tables 4-3, 4-4 and 13-5; rows marked so are from memory in their shrinkage. */
const rows = [
  ["alder, red", 4.4, 7.3, 12.6, 0.00151, 0.00256],
  ["ash, white", 4.9, 7.8, 13.3, 0.00169, 0.00274],
  ["ash, black", 5.0, 7.8, 15.2, 0.00172, 0.00274],
  ["aspen, quaking", 3.5, 6.7, 11.5, 0.00119, 0.00234],
  ["basswood, American", 6.6, 9.3, 15.8, 0.0023, 0.0033],
  ["beech, American", 5.5, 11.9, 17.2, 0.0019, 0.00431],
  ["birch, yellow", 7.3, 9.5, 16.8, 0.00256, 0.00338],
  ["birch, paper", 6.3, 8.6, 16.2, 0.00219, 0.00304],
  ["butternut", 3.4, 6.4, 10.6, 0.00116, 0.00223],
  ["cherry, black", 3.7, 7.1, 11.5, 0.00126, 0.00248],
  ["chestnut, American", 3.4, 6.7, 11.6, 0.00116, 0.00234],
  ["elm, American", 4.2, 9.5, 14.6, 0.00144, 0.00338],
  ["hackberry", 4.8, 8.9, 13.8, 0.00165, 0.00315],
  ["oak, white", 5.6, 10.5, 16.3, 0.0018, 0.00365],
  ["sweetgum", 5.3, 10.2, 15.8, 0.00183, 0.00365],
  ["sycamore, American", 5.0, 8.4, 14.1, 0.00172, 0.00296],
  ["walnut, black", 5.5, 7.8, 12.8, 0.0019, 0.00274],
  ["yellow-poplar", 4.6, 8.2, 12.7, null, null],
  ["western redcedar", 2.4, 5.0, 6.8, null, null],
  ["Douglas-fir, coast", 4.8, 7.6, 12.4, null, null],
  ["mahogany, true", 3.0, 4.1, 7.8, null, null],
  ["mahogany, African (Khaya)", 2.5, 4.5, 8.8, null, null],
  ["maple, sugar", 4.8, 9.9, 14.7, 0.00165, 0.00353, "from memory"],
  ["maple, red", 4.0, 8.2, 12.6, 0.00137, 0.00289, "from memory"],
  ["oak, northern red", 4.0, 8.6, 13.7, 0.00158, 0.00369, "from memory"],
  ["pine, eastern white", 2.1, 6.1, 8.2, null, null, "from memory"],
  ["teak", 2.5, 5.8, 7.0, null, null, "from memory"],
] as const satisfies readonly Row[];

export type WoodSpecies = (typeof rows)[number][0];
export const woodSpecies: readonly WoodSpecies[] = rows.map(([species]) => species);

const table: ReadonlyMap<string, Shrinkage> = new Map(
  (rows as readonly Row[]).map(([species, radial, tangential, volumetric, cr, ct, seen]) => [
    species,
    {
      species,
      radialPercent: radial,
      tangentialPercent: tangential,
      volumetricPercent: volumetric,
      radialCoefficient: cr,
      tangentialCoefficient: ct,
      seen: seen ?? "document",
    },
  ]),
);

/**
 * What is published of a wood's shrinkage.
 *
 * @param species  name as in `woodSpecies`
 * @returns        shrinkage in percent and coefficients to a percent of moisture, or undefined for another name
 *
 * Valid:    the woods of the table
 * Accuracy: a board of a species lies within 15 % (standard) of its mean
 * Source:   USDA Wood Handbook (FPL-GTR-282), tables 4-3, 4-4, 13-5; some rows from memory, and marked
 * @example
 * shrinkageOf("cherry, black")?.tangentialPercent // => 7.1
 */
export const shrinkageOf = (species: string): Shrinkage | undefined => table.get(species);
