import { brokenInto, type LabelText } from "./label-text.ts";

/** A line of words on a label, mm from its corner; `y` is the base line. */
export interface PlacedText {
  readonly x: number;
  readonly y: number;
  readonly size: number;
  readonly says: string;
  readonly as: "cut" | "name" | "plain" | "quiet" | "strong" | "code" | "white";
  readonly middle?: boolean;
}

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** A label laid out, mm. */
export interface LabelLayout {
  readonly texts: readonly PlacedText[];
  readonly stripe: Box;
  readonly codeBox: Box;
  readonly qr: Box;
  /** Dotted lines that a pencil writes on. */
  readonly blanks: readonly { readonly x: number; readonly y: number; readonly width: number }[];
  readonly warning: Box;
  /** Of the body, mm. */
  readonly size: number;
}

/** Readable at arm's length on a jar, and the least that a household printer makes legible. */
const largest = 3.8;
export const smallest = 1.8;
/** Of the body's size: how wide a letter is on average, in the two faces, and how far lines lie apart. */
const letter = 0.53;
const slabLetter = 0.62;
const leading = 1.2;
/** A code is read by a telephone from this size on; common practice. */
const leastQr = 12;
/** Below this height the cut gives up some of its size for the rest, mm. */
const low = 45;

interface Frame {
  readonly width: number;
  readonly height: number;
  readonly size: number;
  readonly columns: 1 | 2;
}

const letters = (width: number, size: number, face = letter): number => Math.floor(width / (size * face));

/** Rows with the blanks that a pencil fills after them. */
const rowsOf = (text: LabelText, blanks: readonly string[]) => [
  ...text.rows,
  ...blanks.map((name) => ({ name, says: "" })),
];

function laidOut(text: LabelText, blanks: readonly string[], frame: Frame): LabelLayout | undefined {
  const { width, height, size, columns } = frame;
  const margin = Math.min(4.5, Math.max(2, height * 0.053));
  const stripe = Math.min(4.2, size * 1.1);
  const left = margin + stripe + size * 0.9;
  const inner = width - margin - left;
  const cutSize = size * (height < low ? 2.9 : 4);
  const codeWidth = size * (1.6 + text.code.length * 1.45);
  const solvent = brokenInto(text.solvent, letters(inner, size), 2);
  const warning = brokenInto(text.warning, letters(inner - size * 2, size), 3);
  const line = size * leading;
  const warningHeight = warning.length * line + size * 0.7;
  const top = margin + cutSize * 0.78;
  const definedAt = top + line * 1.15;
  const nameAt = definedAt + line * 1.6;
  const rowsTop = nameAt + line * (solvent.length + 0.35);
  const warningTop = height - margin - warningHeight;
  const room = warningTop - size * 0.6 - rowsTop;
  const qr = Math.min(25, room, inner * 0.3);
  const rows = rowsOf(text, blanks);
  const rowsWidth = inner - qr - size * 0.6;
  const columnWidth = rowsWidth / columns;
  const nameWidth = size * 4.4;
  const longest = Math.max(...rows.map((row) => row.says.length));
  const fits =
    qr >= leastQr &&
    Math.ceil(rows.length / columns) * line <= room + 1e-9 &&
    longest * size * 0.96 * letter <= columnWidth - nameWidth &&
    text.cutDefined.length * size * 0.92 * letter <= inner &&
    (text.cut.length + 1.6) * cutSize * slabLetter <= inner - codeWidth;
  if (!fits) return undefined;
  const perColumn = Math.ceil(rows.length / columns);
  const at = (i: number) => ({
    x: left + Math.floor(i / perColumn) * columnWidth,
    y: rowsTop + ((i % perColumn) + 0.85) * line,
  });
  const name = brokenInto(text.resin, letters(inner, size * 1.45, slabLetter), 1)[0] ?? "";
  return {
    size,
    stripe: { x: margin, y: margin, width: stripe, height: height - 2 * margin },
    codeBox: { x: left + inner - codeWidth, y: margin, width: codeWidth, height: cutSize * 0.76 },
    qr: { x: left + inner - qr, y: rowsTop, width: qr, height: qr },
    warning: { x: left, y: warningTop, width: inner, height: warningHeight },
    blanks: rows.flatMap((row, i) =>
      row.says === ""
        ? [{ x: at(i).x + nameWidth, y: at(i).y + 0.3, width: columnWidth - nameWidth - size }]
        : [],
    ),
    texts: [
      { x: left, y: top, size: cutSize, says: text.cut, as: "cut" },
      {
        x: left + inner - codeWidth / 2,
        y: margin + cutSize * 0.59,
        size: size * 2.3,
        says: text.code,
        as: "code",
        middle: true,
      },
      { x: left, y: definedAt, size: size * 0.92, says: text.cutDefined, as: "plain" },
      { x: left, y: nameAt, size: size * 1.45, says: name, as: "name" },
      ...solvent.map((says, i) => ({
        x: left,
        y: nameAt + (i + 1) * line,
        size,
        says,
        as: "plain" as const,
      })),
      ...rows.flatMap((row, i) => [
        { ...at(i), size: size * 0.96, says: row.name, as: "quiet" as const },
        { x: at(i).x + nameWidth, y: at(i).y, size: size * 0.96, says: row.says, as: "strong" as const },
      ]),
      ...warning.map((says, i) => ({
        x: left + size * 2,
        y: warningTop + size * 0.2 + (i + 0.95) * line,
        size,
        says,
        as: "white" as const,
      })),
    ],
  };
}

/**
 * A label of any size with all that it must say, its letters as large as that allows; undefined where they would be
 * too small to read. Nothing is left out to make room.
 *
 * @param text    what it says
 * @param blanks  names of what a pencil fills in
 * @param width   mm
 * @param height  mm
 */
export function labelLayout(
  text: LabelText,
  blanks: readonly string[],
  width: number,
  height: number,
): LabelLayout | undefined {
  for (let tenths = Math.round(largest * 10); tenths >= smallest * 10; tenths--)
    for (const columns of [1, 2] as const) {
      const found = laidOut(text, blanks, { width, height, size: tenths / 10, columns });
      if (found !== undefined) return found;
    }
  return undefined;
}
