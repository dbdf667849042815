import { type BoardGeometry, boardGeometry } from "../../../core/design/board-geometry.ts";
import type { Noise } from "../../../core/design/foresight/smallest-difference.ts";
import {
  type AppliedTo,
  type Board,
  type Factor,
  type LayoutKind,
  type MoreOften,
  type Plan,
  withinBoards,
} from "../../../core/design/plan.ts";
import { DomainError } from "../../../core/domain-error.ts";
import type { Body } from "../../../core/notebook/kinds/all.ts";
import { type Fault, FieldReader, listOf } from "./field-reader.ts";

/** What a trial may vary. The known ones know what they sit on; for another thing the person says it. */
export const factorKinds = ["alcohol", "cut", "resin", "method", "other"] as const;
export type FactorKind = (typeof factorKinds)[number];

export interface DraftFactor {
  readonly kind: FactorKind;
  /** For another thing: what it is called. */
  readonly name: string;
  /** Levels as typed, with commas between. */
  readonly levels: string;
  readonly appliedTo: Exclude<AppliedTo, "plank">;
  /** Cuts let down from one stock of each alcohol. */
  readonly fromOneStock: boolean;
  /** The level that stands twice as often as the rest, as a control does; "" for none. */
  readonly twice: string;
}

export interface DraftLook {
  readonly name: string;
  readonly scale: "measured" | "ordered";
  readonly unit: string;
  readonly levels: string;
  readonly matters: string;
  /** The difference that matters is still the trade's, not the person's own. */
  readonly mattersIsCommon: boolean;
  readonly more: string;
  readonly less: string;
}

/** Kinds of layout as they are offered: even pairs come by themselves where the boards allow them. */
export const offeredKinds = [
  "every-board",
  "square",
  "double-square",
  "best",
  "screen",
  "steps",
] as const satisfies readonly LayoutKind[];

/** A trial while it is being asked: texts as typed, so that nothing typed is ever lost. */
export interface Draft {
  readonly kind: (typeof offeredKinds)[number];
  readonly factors: readonly DraftFactor[];
  readonly woods: string;
  readonly boardsPerWood: string;
  readonly planksPerWood: string;
  readonly patchesPerBoard: string;
  readonly boardLengthMm: string;
  readonly boardWidthMm: string;
  readonly coats: string;
  readonly evenings: string;
  readonly daysToJudge: string;
  readonly jarsPerLevel: string;
  readonly millilitres: string;
  readonly looks: readonly DraftLook[];
  /** The factor in which patches side by side always differ; "" for none. */
  readonly neighboursDiffer: string;
  /** The person's own, by what is looked at. */
  readonly noises: Readonly<Record<string, NoiseTyped>>;
}

/** How far like things differ, as typed; "" where nothing was. */
export interface NoiseTyped {
  readonly patch: string;
  readonly jar: string;
  readonly plank: string;
}

export const emptyDraft: Draft = {
  kind: "every-board",
  factors: [
    {
      kind: "alcohol",
      name: "",
      levels: "ethanol, isopropanol",
      appliedTo: "jar",
      fromOneStock: false,
      twice: "",
    },
  ],
  woods: "cherry",
  boardsPerWood: "2",
  planksPerWood: "2",
  patchesPerBoard: "6",
  boardLengthMm: "1000",
  boardWidthMm: "105",
  coats: "4",
  evenings: "4",
  daysToJudge: "28",
  jarsPerLevel: "1",
  millilitres: "3",
  looks: [],
  neighboursDiffer: "",
  noises: {},
};

export interface Asked {
  readonly kind: Draft["kind"];
  /** The entry that asks it, but for its name. */
  readonly body: Body<"trial-asked">;
  readonly factors: readonly Factor[];
  readonly boards: readonly Board[];
  readonly moreOften: readonly MoreOften[];
  readonly neighboursForbidden: Plan["neighboursForbidden"];
  readonly geometry: BoardGeometry;
  readonly jarsPerLevel: number;
  readonly woods: readonly string[];
}

export const factorName = (f: DraftFactor): string => (f.kind === "other" ? f.name.trim() : f.kind);

/** What a draft comes to, or everything in it that cannot be read. */
export function readDraft(draft: Draft): { readonly asked: Asked | null; readonly faults: readonly Fault[] } {
  const r = new FieldReader();
  const onPatches = draft.factors.map((f, i) => readFactor(r, f, i));
  const woods = r.names("woods", draft.woods, 1);
  const jarsPerLevel = r.whole("jarsPerLevel", draft.jarsPerLevel, 1, 6);
  const boards = readBoards(r, draft, woods);
  const geometry = readGeometry(r, draft, Math.max(1, ...boards.map((b) => b.patches)));
  const looksAt = draft.looks.map((look, i) => readLook(r, look, i));
  if (looksAt.length === 0) r.fault("looks", "missing", "");
  const wood: Factor = { name: "wood", levels: woods, appliedTo: "plank" };
  const factors = woods.length > 1 ? [...onPatches, wood] : onPatches;
  if (factors.length === 0) r.fault("factors", "missing", "");
  const names = factors.map((f) => f.name);
  const twice = names.find((name, i) => names.indexOf(name) !== i);
  if (twice !== undefined) r.fault("factors", "named twice", twice);
  const body: Body<"trial-asked"> = {
    question: "",
    layout: draft.kind,
    varies: factors.map(({ name, levels, appliedTo, fromOneStock }) => ({
      factor: name,
      levels: [...levels],
      appliedTo,
      ...(fromOneStock === true ? { fromOneStock } : {}),
    })),
    ...(woods.length === 1 ? { held: [{ what: "wood", at: woods[0] as string }] } : {}),
    looksAt,
    coats: r.whole("coats", draft.coats, 1, 30),
    evenings: r.whole("evenings", draft.evenings, 1, 60),
    jarsPerLevel,
    millilitresPerPatchCoat: r.number("millilitres", draft.millilitres, 0.1, 200),
    daysToJudge: r.number("daysToJudge", draft.daysToJudge, 0, 365),
  };
  if (r.faults.length > 0 || geometry === null) return { asked: null, faults: r.faults };
  const [moreOften, neighboursForbidden] = [moreOftenIn(draft, factors), neighboursIn(draft, factors)];
  return {
    asked: {
      kind: draft.kind,
      body,
      factors,
      boards,
      moreOften,
      neighboursForbidden,
      geometry,
      jarsPerLevel,
      woods,
    },
    faults: [],
  };
}

/** A level that is not there any more is forgotten. */
const moreOftenIn = (draft: Draft, factors: readonly Factor[]): MoreOften[] =>
  draft.factors.flatMap((f) => {
    const name = factorName(f);
    const levels = factors.find((one) => one.name === name)?.levels ?? [];
    return levels.includes(f.twice) ? [{ what: { [name]: f.twice }, times: 2 }] : [];
  });

const neighboursIn = (draft: Draft, factors: readonly Factor[]): Plan["neighboursForbidden"] =>
  withinBoards({ factors })
    .filter((f) => f.name === draft.neighboursDiffer)
    .flatMap((f) => f.levels.map((level) => [{ [f.name]: level }, { [f.name]: level }] as const));

function readFactor(r: FieldReader, f: DraftFactor, i: number): Factor {
  const name = factorName(f);
  if (name === "") r.fault(`factors.${i}.name`, "missing", "");
  return {
    name,
    levels: r.names(`factors.${i}.levels`, f.levels, 2),
    appliedTo: f.appliedTo,
    ...(f.appliedTo === "jar" && f.fromOneStock ? { fromOneStock: true } : {}),
  };
}

const letters = "ABCDEFGHJKLMNPQRSTUVWXYZ";

function readBoards(r: FieldReader, draft: Draft, woods: readonly string[]): readonly Board[] {
  const before = r.faults.length;
  const perWood = r.whole("boardsPerWood", draft.boardsPerWood, 1, 24);
  const sizes = listOf(draft.patchesPerBoard).map((typed) => r.whole("patchesPerBoard", typed, 1, 40));
  if (sizes.length === 0) r.fault("patchesPerBoard", "missing", draft.patchesPerBoard);
  const planks = r.whole("planksPerWood", draft.planksPerWood, 1, Math.max(1, perWood || 1));
  if (r.faults.length > before) return [];
  return woods.flatMap((wood, w) =>
    Array.from({ length: perWood }, (_, n) => ({
      board: `${wood} ${n + 1}`,
      plank: plankName(w * planks + (n % planks)),
      wood,
      patches: sizes[n % sizes.length] as number,
    })),
  );
}

const plankName = (n: number): string =>
  (letters[n % letters.length] as string) +
  (n < letters.length ? "" : String(Math.floor(n / letters.length) + 1));

function readGeometry(r: FieldReader, draft: Draft, patches: number): BoardGeometry | null {
  const before = r.faults.length;
  const length = r.number("boardLengthMm", draft.boardLengthMm, 50, 5000);
  const width = r.number("boardWidthMm", draft.boardWidthMm, 30, 1000);
  if (r.faults.length > before) return null;
  try {
    return boardGeometry(length, width, patches);
  } catch (error) {
    if (!(error instanceof DomainError)) throw error;
    const { field, limits } = error.detail;
    const key = field === "lengthMm" ? "boardLengthMm" : "boardWidthMm";
    r.fault(
      key,
      "does not fit",
      key === "boardLengthMm" ? draft.boardLengthMm : draft.boardWidthMm,
      limits?.min,
    );
    return null;
  }
}

function readLook(r: FieldReader, look: DraftLook, i: number): Body<"trial-asked">["looksAt"][number] {
  const at = `looks.${i}`;
  if (look.name.trim() === "") r.fault(`${at}.name`, "missing", "");
  if (look.scale === "ordered")
    return {
      name: look.name.trim(),
      scale: "ordered",
      levels: r.names(`${at}.levels`, look.levels, 2),
      matters: r.number(`${at}.matters`, look.matters, 0.01, 1),
      mattersIsCommon: look.mattersIsCommon,
    };
  return {
    name: look.name.trim(),
    scale: "measured",
    unit: look.unit.trim(),
    matters: r.number(`${at}.matters`, look.matters, Number.MIN_VALUE, 1e9),
    mattersIsCommon: look.mattersIsCommon,
    ...(look.more.trim() === "" ? {} : { more: look.more.trim() }),
    ...(look.less.trim() === "" ? {} : { less: look.less.trim() }),
  };
}

/** Shares of what matters, until anything is known: from memory. */
const assumed: Noise = { patch: 0.6, jar: 0.2, plank: 0.4 };

/** How far like things differ in what is looked at: as typed, or as an earlier trial had it, or shares of what matters. */
export function noiseOf(
  draft: Draft,
  look: { readonly name: string; readonly matters: number },
  earlier: Partial<Noise> = {},
): Noise {
  const own = draft.noises[look.name];
  const known = (key: keyof Noise): number => {
    const typed = (own?.[key] ?? "").trim().replace(",", ".");
    const value = Number(typed);
    return typed !== "" && value >= 0 ? value : (earlier[key] ?? assumed[key] * look.matters);
  };
  const patch = known("patch");
  return {
    patch: patch > 0 ? patch : assumed.patch * look.matters,
    jar: known("jar"),
    plank: known("plank"),
  };
}
