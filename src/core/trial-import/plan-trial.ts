import type { AppliedTo } from "../design/plan.ts";
import { plainText, readNumber } from "../quantity/read-number.ts";
import type { Table } from "../table.ts";
import type { Role, RoleMatch } from "./roles.ts";

/** What was read, as the person says it. */
export interface ReadAs {
  readonly scale: "measured" | "ordered";
  /** Of an ordered scale, from least to most. */
  readonly levels: readonly string[];
}

export interface ImportedPatch {
  readonly patch: string;
  readonly board: string;
  readonly plank: string;
  readonly wood: string;
  readonly place: number;
  readonly treatment: Readonly<Record<string, string>>;
  readonly jar: string;
}

export interface ImportedReading {
  readonly patch: string;
  readonly value: number | string;
  readonly judge: string | null;
  readonly occasion: number | null;
  readonly afterCoat: number | null;
  readonly days: number | null;
}

export interface ImportedFactor {
  readonly name: string;
  readonly levels: readonly string[];
  readonly appliedTo: AppliedTo;
}

/** Why a row, or the whole table, does not fit. Rows count from 1, without the headings. */
export interface ImportProblem {
  readonly why:
    | "no-patch-column"
    | "no-value-column"
    | "nothing-varies"
    | "no-patch"
    | "no-level"
    | "not-a-number"
    | "not-on-the-scale"
    | "another-recipe"
    | "another-board";
  readonly row: number | null;
  readonly column: string | null;
  readonly value: string;
}

export interface PlannedTrial {
  readonly patches: readonly ImportedPatch[];
  readonly readings: readonly ImportedReading[];
  /** What varied, with two levels or more. */
  readonly factors: readonly ImportedFactor[];
  /** What was the same everywhere. */
  readonly held: readonly { readonly what: string; readonly at: string }[];
  /** Nobody said which jar: one of each recipe is taken. */
  readonly jarsToldApart: boolean;
  readonly problems: readonly ImportProblem[];
}

type Varied = Pick<RoleMatch, "column" | "header" | "appliedTo">;

/** One table read by its roles; problems are collected, so that a page can say all of them at once. */
class TrialReader {
  readonly problems: ImportProblem[] = [];
  readonly patches = new Map<string, ImportedPatch>();
  readonly readings: ImportedReading[] = [];
  readonly #matches: readonly RoleMatch[];
  readonly #as: ReadAs;
  readonly varied: readonly Varied[];

  constructor(matches: readonly RoleMatch[], as: ReadAs) {
    this.#matches = matches;
    this.#as = as;
    this.varied = matches.filter((m) => m.role === "varies");
    if (this.#columnOf("patch") === undefined) this.#fault("no-patch-column");
    if (this.#columnOf("value") === undefined) this.#fault("no-value-column");
    if (this.varied.length === 0) this.#fault("nothing-varies");
  }

  #columnOf = (role: Role): RoleMatch | undefined => this.#matches.find((m) => m.role === role);

  #fault(
    why: ImportProblem["why"],
    row: number | null = null,
    column: string | null = null,
    value = "",
  ): void {
    this.problems.push({ why, row, column, value });
  }

  read(cells: readonly string[], row: number): void {
    if (cells.every((cell) => cell.trim() === "")) return;
    const text = (role: Role): string => (cells[this.#columnOf(role)?.column ?? -1] ?? "").trim();
    const patch = text("patch");
    if (patch === "") {
      this.#fault("no-patch", row, this.#columnOf("patch")?.header ?? null);
      return;
    }
    const treatment = this.#treatment(cells, row);
    if (treatment === null) return;
    this.#place(patch, treatment, text, row);
    const value = this.#value(text("value"), row);
    if (value === null) return;
    this.readings.push({
      patch,
      value,
      judge: text("judge") || null,
      occasion: wholeOrNull(text("occasion")),
      afterCoat: wholeOrNull(text("coat")),
      days: numberOrNull(text("days")),
    });
  }

  #treatment(cells: readonly string[], row: number): Record<string, string> | null {
    const found = this.varied.map((m) => [m.header, (cells[m.column] ?? "").trim()] as const);
    const bare = found.find(([, level]) => level === "");
    if (bare === undefined) return Object.fromEntries(found);
    this.#fault("no-level", row, bare[0]);
    return null;
  }

  #place(
    patch: string,
    treatment: Readonly<Record<string, string>>,
    text: (role: Role) => string,
    row: number,
  ): void {
    const wood = this.varied.find((m) => m.appliedTo === "plank");
    const board = text("board") || text("plank") || "board";
    const jarNames = this.varied.filter((m) => m.appliedTo === "jar").map((m) => m.header);
    const recipe = jarNames.map((name) => treatment[name]).join(" · ") || "the one recipe";
    const before = this.patches.get(patch);
    if (before === undefined) {
      const onBoard = [...this.patches.values()].filter((p) => p.board === board).length;
      this.patches.set(patch, {
        patch,
        board,
        plank: text("plank") || board,
        wood: wood === undefined ? "wood" : (treatment[wood.header] ?? "wood"),
        place: onBoard + 1,
        treatment,
        jar: text("jar") || `${recipe} · jar 1`,
      });
      return;
    }
    const other = Object.keys(treatment).find((name) => before.treatment[name] !== treatment[name]);
    if (other !== undefined) this.#fault("another-recipe", row, other, patch);
    else if (before.board !== board)
      this.#fault("another-board", row, this.#columnOf("board")?.header ?? null, patch);
  }

  /** Null where nothing was read, which is no fault, and where it does not fit. */
  #value(typed: string, row: number): number | string | null {
    const column = this.#columnOf("value")?.header ?? null;
    if (typed === "") return null;
    if (this.#as.scale === "ordered") {
      const level = this.#as.levels.find((one) => one.toLowerCase() === typed.toLowerCase());
      if (level === undefined) this.#fault("not-on-the-scale", row, column, typed);
      return level ?? null;
    }
    const value = numberOrNull(typed);
    if (value === null) this.#fault("not-a-number", row, column, typed);
    return value;
  }
}

/** A number and nothing else; null too where a comma may be either thing. */
function numberOrNull(typed: string): number | null {
  const text = plainText(typed);
  const isBelow = text.startsWith("-");
  const read = readNumber(isBelow ? text.slice(1) : text);
  if (!read.ok || read.value.rest.trim() !== "" || read.value.values.length !== 1) return null;
  const [size = Number.NaN] = read.value.values;
  return isBelow ? -size : size;
}

function wholeOrNull(typed: string): number | null {
  const value = numberOrNull(typed);
  return value !== null && Number.isInteger(value) && value >= 0 ? value : null;
}

/**
 * What a table of somebody's readings comes to as a trial: patches with what was on them, jars, boards, readings, and
 * everything that does not fit.
 *
 * @param table    headings and rows, a row a reading
 * @param matches  what each column is
 * @param as       the scale of the value
 * @returns        the plan with its problems; nothing may be written while there are any
 */
export function planTrial(table: Table, matches: readonly RoleMatch[], as: ReadAs): PlannedTrial {
  const reader = new TrialReader(matches, as);
  if (reader.problems.length === 0)
    table.rows.forEach((cells, i) => {
      reader.read(cells, i + 1);
    });
  const patches = [...reader.patches.values()];
  const varied = reader.varied.map(({ header, appliedTo }) => ({
    name: header,
    appliedTo,
    levels: [...new Set(patches.map((p) => p.treatment[header] ?? ""))],
  }));
  return {
    patches,
    readings: reader.readings,
    factors: varied.filter((f) => f.levels.length > 1),
    held: varied.flatMap((f) => (f.levels.length === 1 ? [{ what: f.name, at: f.levels[0] as string }] : [])),
    jarsToldApart: matches.some((m) => m.role === "jar"),
    problems: reader.problems,
  };
}

/** Different words of the value column as they first stand, where it holds more words than numbers: steps to be put in order. */
export function wordsRead(table: Table, matches: readonly RoleMatch[]): readonly string[] {
  const column = matches.find((m) => m.role === "value")?.column;
  if (column === undefined) return [];
  const cells = table.rows.map((row) => (row[column] ?? "").trim()).filter((cell) => cell !== "");
  const numbers = cells.filter((cell) => numberOrNull(cell) !== null).length;
  return 2 * numbers >= cells.length ? [] : [...new Set(cells)];
}
