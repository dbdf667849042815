import { type ResinGrade, resinGrades } from "../../core/colour/resin-grades.ts";
import type { Body } from "../../core/notebook/kinds/all.ts";
import { fields, readQuantity } from "../controls/read-quantity.ts";
import { upToDigits } from "../words/number.ts";

type Resin = NonNullable<Body<"material-bought">["resin"]>;
export const waxes = ["dewaxed", "waxy", "told", "unknown"] as const;
type Wax = (typeof waxes)[number];

/** Common practice: dewaxed grades hold 0.2–1 % of wax, natural ones 3–5 %, seedlac about 5 %. */
const usualShares: Partial<Record<Wax, number>> = { dewaxed: 0.005, waxy: 0.045 };

/** Flakes being typed. */
export interface ResinDraft {
  readonly grade: ResinGrade | "other" | undefined;
  readonly gradeWords: string;
  readonly wax: Wax;
  readonly waxShare: string;
  readonly moisture: string;
}

export const emptyResin: ResinDraft = {
  grade: undefined,
  gradeWords: "",
  wax: "dewaxed",
  waxShare: "",
  moisture: "",
};

const percent = (share: number): string => `${upToDigits(share * 100, 6)} %`;

/** Flakes as they were kept, as one would type them: the way back from `readResin`. */
export function draftOfResin(kept: Resin | undefined): ResinDraft {
  const { grade = "", waxMassFraction: wax, moistureMassFraction: moisture } = kept ?? {};
  const listed = resinGrades.find((one) => one.grade === grade)?.grade;
  const usual = waxes.find((one) => usualShares[one] === wax && wax !== undefined);
  return {
    grade: listed ?? (grade === "" ? undefined : "other"),
    gradeWords: listed === undefined ? grade : "",
    wax: usual ?? (wax === undefined ? "unknown" : "told"),
    waxShare: usual !== undefined || wax === undefined ? "" : percent(wax),
    moisture: moisture === undefined ? "" : percent(moisture),
  };
}

/** A share as typed; undefined for nothing, NaN for what is not a share. */
const share = (typed: string): number | undefined => {
  const read = readQuantity(typed, fields.share);
  return read.ok ? read.value.si : typed.trim() === "" ? undefined : Number.NaN;
};

/** What an entry keeps of the flakes, with what it knew besides; undefined while a field does not fit. */
export function readResin(draft: ResinDraft, old?: Resin): Resin | undefined {
  const grade = draft.grade === "other" ? draft.gradeWords.trim() : (draft.grade ?? "");
  const wax = draft.wax === "told" ? (share(draft.waxShare) ?? Number.NaN) : usualShares[draft.wax];
  const moisture = share(draft.moisture);
  if (grade === "" || Number.isNaN(wax) || Number.isNaN(moisture)) return undefined;
  const { waxMassFraction: _wax, moistureMassFraction: _moisture, ...rest } = old ?? {};
  return {
    ...rest,
    grade,
    ...(wax === undefined ? {} : { waxMassFraction: wax }),
    ...(moisture === undefined ? {} : { moistureMassFraction: moisture }),
  };
}
