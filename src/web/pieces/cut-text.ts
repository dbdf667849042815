import { formatFraction } from "../../core/quantity/format-quantity.ts";
import { withDigits } from "../words/number.ts";

/** `1½`, `2`, `1.58`: a cut as a label says it. */
export const shortCut = (lbPerGal: number): string => formatFraction(lbPerGal) ?? withDigits(lbPerGal, 3);
