import type { AppliedTo } from "../design/plan.ts";
import type { Table } from "../table.ts";

/** What a column of somebody's readings can be: where and how a value was read, the value, or something that varied. */
export const roles = [
  "patch",
  "value",
  "varies",
  "board",
  "plank",
  "jar",
  "judge",
  "occasion",
  "coat",
  "days",
] as const;
export type Role = (typeof roles)[number];

/** What a column is taken for; everything here can be put otherwise by hand. */
export interface RoleMatch {
  readonly column: number;
  readonly header: string;
  /** Null for a column that is not brought over. */
  readonly role: Role | null;
  /** For something that varied: what it sat on. */
  readonly appliedTo: AppliedTo;
  /** Some cells, to judge the match by. */
  readonly sample: readonly string[];
}

/** Words that a heading is known by, the telling ones first. */
const headingWords: readonly (readonly [Role, RegExp])[] = [
  ["days", /\b(days?|age)\b/],
  ["occasion", /\b(occasion|repeat|round|time|sitting)\b/],
  ["judge", /\b(judge|who|rater|observer|read by|person)\b/],
  ["coat", /\b(coats?|layers?)\b/],
  ["patch", /\b(patch|code|sample|spot|specimen|coupon)\b/],
  ["board", /\b(board|panel|block)\b/],
  ["plank", /\b(plank|tree|log)\b/],
  ["jar", /\b(jar|batch|lot|bottle)\b/],
  ["value", /\b(value|reading|result|score|gloss|sheen|rating|grade|colou?r|grain|smooth\w*|hardness)\b/],
];

const onJars = /\b(alcohol|spirit|solvent|cut|resin|flakes?|strength|wax)\b/;
const onPlanks = /\b(wood|species|timber)\b/;

/** Few levels, each of them more than once: what an experimenter chose. */
const looksVaried = (cells: readonly string[]): boolean => {
  const levels = new Set(cells).size;
  return levels >= 2 && levels <= 12 && 2 * levels <= cells.length;
};

function roleOf(text: string, cells: readonly string[]): Role | null {
  if (onJars.test(text) || onPlanks.test(text)) return "varies";
  const known = headingWords.find(([, words]) => words.test(text))?.[0];
  return known ?? (looksVaried(cells) ? "varies" : null);
}

/**
 * What each column of a table of readings is likely to be, by its heading and its cells: a proposal that a person
 * confirms.
 *
 * @param table  headings and rows
 * @returns      a match for each column in their order; a role but for "varies" is given to one column only
 */
export function proposeRoles(table: Table): readonly RoleMatch[] {
  const taken = new Set<Role>();
  return table.header.map((header, column) => {
    const text = header.toLowerCase().replace(/[_-]/g, " ");
    const cells = table.rows.map((row) => (row[column] ?? "").trim()).filter((cell) => cell !== "");
    const likely = roleOf(text, cells);
    const role = likely !== null && likely !== "varies" && taken.has(likely) ? null : likely;
    if (role !== null) taken.add(role);
    const appliedTo = onPlanks.test(text) ? "plank" : onJars.test(text) ? "jar" : "patch";
    return { column, header, role, appliedTo, sample: cells.slice(0, 3) };
  });
}
