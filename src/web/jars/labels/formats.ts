export const papers = {
  a4: { width: 210, height: 297 },
  letter: { width: 215.9, height: 279.4 },
} as const;
export type Paper = keyof typeof papers;

/** A sheet of labels, everything in millimetres. */
export interface LabelFormat {
  readonly paper: Paper;
  readonly width: number;
  readonly height: number;
  readonly across: number;
  readonly down: number;
  /** Of the first label's corner. */
  readonly left: number;
  readonly top: number;
  /** From one label's left to the next one's. */
  readonly pitch: number;
  /** Plain paper, cut on dashes; a sheet of labels is cut already. */
  readonly dashes: boolean;
}

/** A foot of plain paper keeps the measuring bar. */
const foot = 15;
const edge = 5;

/** As many of a size as a plain sheet holds, cut on dashes; undefined where not one fits. */
export function plainSheet(paper: Paper, width: number, height: number): LabelFormat | undefined {
  const page = papers[paper];
  const across = Math.floor((page.width - 2 * edge) / width + 1e-9);
  const down = Math.floor((page.height - edge - foot) / height + 1e-9);
  if (!(across >= 1 && down >= 1)) return undefined;
  return {
    paper,
    width,
    height,
    across,
    down,
    left: (page.width - across * width) / 2,
    top: Math.min(12, page.height - foot - down * height),
    pitch: width,
    dashes: true,
  };
}

const cutSheet = (
  paper: Paper,
  [width, height]: readonly [number, number],
  [across, down]: readonly [number, number],
  gap: number,
): LabelFormat => ({
  paper,
  width,
  height,
  across,
  down,
  left: (papers[paper].width - across * width - (across - 1) * gap) / 2,
  top: (papers[paper].height - down * height) / 2,
  pitch: width + gap,
  dashes: false,
});

/** The size that fits a jar of half a litre with all that is to be said. */
export const plainSize = { width: 95, height: 85 } as const;

/**
 * Sheets of self-adhesive labels by the size of one, centred on the paper: common sizes of the trade in stationery,
 * from memory; smaller ones do not hold what a label must say. A printer that is off by a little is put right by hand.
 */
export const cutSheets: readonly LabelFormat[] = [
  cutSheet("a4", [99.1, 67.7], [2, 4], 2.5),
  cutSheet("a4", [105, 74], [2, 4], 0),
  cutSheet("a4", [99.1, 38.1], [2, 7], 2.5),
  cutSheet("a4", [70, 37], [3, 8], 0),
  cutSheet("letter", [101.6, 84.7], [2, 3], 4.8),
  cutSheet("letter", [101.6, 50.8], [2, 5], 4.8),
];

export const perSheet = (format: LabelFormat): number => format.across * format.down;

/** Where the nth label of a sheet has its corner. */
export const placeOf = (format: LabelFormat, n: number) => ({
  x: format.left + (n % format.across) * format.pitch,
  y: format.top + Math.floor(n / format.across) * format.height,
});
