import { createSignal } from "solid-js";
import { cutSheets, type LabelFormat, type Paper, plainSheet, plainSize } from "./formats.ts";

/** `63,5`, `63.5`, `63.5 mm`; NaN for anything else. */
const millimetresIn = (text: string): number =>
  /^\s*-?\d+(?:[.,]\d+)?\s*(?:mm)?\s*$/.test(text)
    ? Number(text.replace(",", ".").replace("mm", ""))
    : Number.NaN;

/** Sizes of one's own: from what can say all that a label must, to a whole sheet. */
const limits = { width: [50, 200], height: [30, 260] } as const;

/** Which sheet is in the printer: plain paper, a sheet of labels by the size of one, or a size of one's own. */
export function useFormat() {
  const [paper, setPaper] = createSignal<Paper>("a4");
  const [chosen, setChosen] = createSignal("plain");
  const [width, setWidth] = createSignal("");
  const [height, setHeight] = createSignal("");
  const [right, setRight] = createSignal("0");
  const [down, setDown] = createSignal("0");
  const own = () => chosen() === "own";
  const within = (text: string, [least, most]: readonly [number, number]) => {
    const value = millimetresIn(text);
    return value >= least && value <= most;
  };
  const shift = (text: string) => Math.abs(millimetresIn(text)) <= 20;
  const sheets = () => cutSheets.filter((sheet) => sheet.paper === paper());
  return {
    limits,
    paper,
    setPaper: (to: Paper) => {
      setPaper(to);
      if (!own()) setChosen("plain");
    },
    chosen,
    setChosen,
    sheets,
    own,
    width,
    setWidth,
    height,
    setHeight,
    right,
    setRight,
    down,
    setDown,
    widthWrong: () => own() && !within(width(), limits.width),
    heightWrong: () => own() && !within(height(), limits.height),
    rightWrong: () => !shift(right()),
    downWrong: () => !shift(down()),
    moved: () => ({
      right: shift(right()) ? millimetresIn(right()) : 0,
      down: shift(down()) ? millimetresIn(down()) : 0,
    }),
    /** Undefined while a size of one's own does not fit. */
    format: (): LabelFormat | undefined => {
      if (chosen() === "plain") return plainSheet(paper(), plainSize.width, plainSize.height);
      if (!own()) return sheets()[Number(chosen())];
      return within(width(), limits.width) && within(height(), limits.height)
        ? plainSheet(paper(), millimetresIn(width()), millimetresIn(height()))
        : undefined;
    },
  };
}
export type FormatChoice = ReturnType<typeof useFormat>;
