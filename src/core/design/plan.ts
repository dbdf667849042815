/** What a level is put on: the thing that must be made afresh for a true repeat of it. */
export type AppliedTo = "jar" | "plank" | "board" | "patch";

export interface Factor {
  readonly name: string;
  readonly levels: readonly string[];
  readonly appliedTo: AppliedTo;
  /** True when its levels are let down from one stock, as two cuts are: the stock's luck is then shared by them. */
  readonly fromOneStock?: boolean;
}

export interface Board {
  readonly board: string;
  /** The plank that it was sawn from: boards of one plank share its luck. */
  readonly plank: string;
  readonly wood: string;
  /** How many patches it has, side by side. */
  readonly patches: number;
}

/** A level for each factor; as a pattern (in a forbidden list), for some of them. */
export type Treatment = Readonly<Record<string, string>>;

export interface MoreOften {
  /** Levels of what changes on a board. */
  readonly what: Treatment;
  /** Against once for the rest, from 2. */
  readonly times: number;
}

/**
 * How a layout is made. `every-board`: each board holds everything that it can, the rest shared out evenly;
 * `even-pairs`: boards that are too small, every pair together equally often; `square`: everything once on each board
 * and once at each place; `double-square`: and once at each turn, or once with each level of a second factor;
 * `screen`: many things at two levels in few patches; `best`: the patches that tell most where not everything fits;
 * `steps`: one factor rises in steps along each board, the others change from board to board.
 */
export const layoutKinds = [
  "every-board",
  "even-pairs",
  "square",
  "double-square",
  "screen",
  "best",
  "steps",
] as const;
export type LayoutKind = (typeof layoutKinds)[number];

export interface Plan {
  /** `every-board` unless told. */
  readonly kind?: LayoutKind;
  /** For `best`: factors whose effect on each other is asked as well. */
  readonly together?: readonly (readonly [string, string])[];
  readonly factors: readonly Factor[];
  /** Jars mixed independently for each recipe; from 1. */
  readonly jarsPerLevel: number;
  readonly boards: readonly Board[];
  /** Patterns that must stand nowhere; besides factors they may name a `board`, `plank` or `wood`. */
  readonly forbidden: readonly Treatment[];
  /** Pairs of patterns that must not lie side by side. */
  readonly neighboursForbidden: readonly (readonly [Treatment, Treatment])[];
  /** What stands so many times as often as the rest, as a control does; where things are shared out over boards. */
  readonly moreOften?: readonly MoreOften[];
  /** Sittings, each with an order of coating of its own. */
  readonly sessions: number;
}

export interface LaidPatch {
  readonly patch: string;
  readonly board: string;
  /** From 1, along the board. */
  readonly place: number;
  readonly treatment: Treatment;
  readonly jar: string;
  readonly code: string;
  /** Its turn in each session, from 1 over all boards; the patches of a board follow one another. */
  readonly order: readonly number[];
}

/** The wood is read from the boards; every other level is dealt by lot. */
export const isWood = (factor: Factor): boolean => factor.name === "wood";

/** The factors that are dealt by lot and sit on one of the named things. */
export const factorsOn = (plan: Pick<Plan, "factors">, ...on: AppliedTo[]): readonly Factor[] =>
  plan.factors.filter((f) => !isWood(f) && on.includes(f.appliedTo));

/** What can differ from patch to patch on one board. */
export const withinBoards = (plan: Pick<Plan, "factors">): readonly Factor[] =>
  factorsOn(plan, "jar", "patch");

/** Every combination of the levels of some factors, the last factor running fastest; of none, one empty combination. */
export function combinations(factors: readonly Factor[]): readonly Treatment[] {
  return factors.reduce<readonly Treatment[]>(
    (done, factor) => done.flatMap((t) => factor.levels.map((level) => ({ ...t, [factor.name]: level }))),
    [{}],
  );
}

/** Whether all that a pattern names is so. */
export const matches = (pattern: Treatment, treatment: Treatment): boolean =>
  Object.entries(pattern).every(([name, level]) => treatment[name] === level);

/** The jars' name on paper: its recipe and its number. */
export const jarLabel = (recipe: Treatment, number: number): string =>
  [...Object.values(recipe), `jar ${number}`].join(" · ");
