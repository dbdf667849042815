import { DomainError } from "../domain-error.ts";
import type { ResidualRemark } from "../statistics/model/residual-checks.ts";
import type { Evidence } from "../statistics/verdict/ordered-evidence.ts";
import type { Flag } from "./flag.ts";
import type { Response, Row } from "./verdict-input.ts";

/** What a difference is taken to matter from when nobody has said: common practice, and for shares our convention. */
const usualMatters: readonly { readonly name: RegExp; readonly matters: number; readonly unit: string }[] = [
  { name: /gloss/i, matters: 5, unit: "gloss units (common practice)" },
  { name: /colou?r|ΔE|delta ?E/i, matters: 2, unit: "ΔE00 (common practice)" },
];

interface Matters {
  readonly matters: number;
  readonly flags: readonly Flag[];
}

export function mattersOf({ scale, name, matters }: Response): Matters {
  const field = "response.matters";
  if (scale === "measured") {
    if (matters !== undefined) return { matters, flags: [] };
    const usual = usualMatters.find((u) => u.name.test(name));
    if (usual === undefined)
      throw new DomainError({
        code: "missing",
        field,
        value: undefined,
        because: `How large a difference in ${name} would matter to you, in its own unit?`,
      });
    const message = `No difference that matters was given: ${usual.matters} ${usual.unit} is taken.`;
    return { matters: usual.matters, flags: [{ code: "matters-assumed", field, message }] };
  }
  if (matters === undefined)
    return {
      matters: 0.3,
      flags: [
        {
          code: "matters-assumed",
          field,
          message: "No difference that matters was given: 0.3 is taken, a convention of Lacbench.",
        },
      ],
    };
  if (!(matters < 1))
    throw new DomainError({
      code: "out-of-range",
      field,
      value: matters,
      limits: { min: 0, max: 0.99 },
      because: "On this scale it is how much more often one is put above the other, as a share.",
    });
  return { matters, flags: [] };
}

export function flagsOfDays(rows: readonly Row[]): Flag[] {
  const days = rows.flatMap((r) => (r.value === null ? [] : (r.daysSinceCoat ?? [])));
  const read = rows.filter((r) => r.value !== null).length;
  const field = "rows.daysSinceCoat";
  if (days.length > 0 && days.length < read)
    return [
      { code: "days-missing", field, message: "For some readings the days since the coat are not known." },
    ];
  const [least, most] = [Math.min(...days), Math.max(...days)];
  if (days.length === 0 || most - least < 1) return [];
  return [
    {
      code: "unequal-days",
      field,
      message: `Read from ${least} to ${most} days after the coat, and a young film still changes: part of a difference may be its age.`,
    },
  ];
}

/** What the noise looks like where it does not look as the method takes it to, in words. */
export function flagOfRemark(remark: ResidualRemark): Flag {
  const field = "rows.value";
  if (remark.code === "one-patch-apart")
    return {
      code: remark.code,
      field,
      message: `Patch ${remark.patch} reads far from what its board, its jar and its level say. Read it again; leave it out only for a reason that you can see.`,
    };
  if (remark.code === "spread-differs")
    return {
      code: remark.code,
      field,
      message: `Patches of ${remark.most} scatter ${remark.times.toPrecision(2)} times as far as those of ${remark.least}: the jaws of pairs with ${remark.most} are too close, the others too wide.`,
    };
  return {
    code: remark.code,
    field,
    message:
      "Readings scatter more the higher they are: compare their logarithms, or say differences as ratios.",
  };
}

const kinds = {
  shares: "how often one stood above the other",
  permutation: "dealing the recipes anew",
  odds: "the odds of a higher step",
} as const;

/** Kinds of evidence that do not say the same are both told. */
export function flagsOfEvidence(evidence: readonly Evidence[]): Flag[] {
  const named = (differs: boolean): string =>
    evidence
      .filter((e) => e.differs === differs)
      .map((e) => kinds[e.kind])
      .join(" and ");
  if (new Set(evidence.map((e) => e.differs)).size < 2) return [];
  return [
    {
      code: "evidence-disagrees",
      field: "rows.value",
      message: `A difference shows by ${named(true)}, and does not by ${named(false)}: believe neither alone.`,
    },
  ];
}
