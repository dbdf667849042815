import type { Table } from "../../../core/table.ts";
import type { ReadAs } from "../../../core/trial-import/plan-trial.ts";
import { proposeRoles, type Role, type RoleMatch } from "../../../core/trial-import/roles.ts";
import type { Told } from "../../../core/trial-import/write-trial.ts";

/** What the person put otherwise than it was proposed, by column. */
export type Choices = Readonly<Record<number, Partial<Pick<RoleMatch, "role" | "appliedTo">> | undefined>>;

/** What each column is: as proposed, with what was chosen in its place. */
export const matchesOf = (table: Table, choices: Choices): readonly RoleMatch[] =>
  proposeRoles(table).map((proposed) => ({ ...proposed, ...choices[proposed.column] }));

/** The choices with one column taken for a role, and no other for the same, but for what varied. */
export function chosenRole(
  matches: readonly RoleMatch[],
  choices: Choices,
  column: number,
  role: Role | null,
): Choices {
  const others = matches.filter(
    (m) => m.column !== column && role !== null && role !== "varies" && m.role === role,
  );
  return {
    ...choices,
    ...Object.fromEntries(others.map((m) => [m.column, { ...choices[m.column], role: null }])),
    [column]: { ...choices[column], role },
  };
}

/** What is said of the reading, as typed; nothing where it stays as it was proposed. */
export interface LookTyped {
  readonly name: string | null;
  readonly unit: string;
  readonly levels: string | null;
  readonly matters: string;
}

export const firstLook: LookTyped = { name: null, unit: "", levels: null, matters: "" };

const listOf = (typed: string): string[] =>
  typed
    .split(/[,;\n]/)
    .map((part) => part.trim())
    .filter((part) => part !== "");

/** A scale in words where words were read. */
export const readAs = (typed: LookTyped, words: readonly string[]): ReadAs =>
  words.length === 0
    ? { scale: "measured", levels: [] }
    : { scale: "ordered", levels: typed.levels === null ? words : listOf(typed.levels) };

/** The difference that matters; null where it is none. */
export function mattersOf(typed: string, scale: ReadAs["scale"]): number | null {
  const value = Number(typed.trim().replace(",", "."));
  const fits = typed.trim() !== "" && value > 0 && (scale === "measured" || value < 1);
  return fits ? value : null;
}

export const lookOf = (
  typed: LookTyped,
  { scale, levels }: ReadAs,
  header: string,
  matters: number,
): Told["look"] => ({
  name: (typed.name ?? header).trim() || "value",
  scale,
  ...(scale === "ordered" ? { levels: [...levels] } : {}),
  ...(typed.unit.trim() === "" ? {} : { unit: typed.unit.trim() }),
  matters,
});
