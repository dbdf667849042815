import type { z } from "zod";
import { DomainError } from "../domain-error.ts";
import { fail, ok, type Result } from "../result.ts";
import { namesAt } from "./names-at.ts";
import { type Problem, problemFromDomain } from "./problem.ts";

/**
 * One calculation that a person may want on its own. From this object come the TypeScript export, the command
 * line, the HTTP route with its OpenAPI document, the reference page and the examples that the tests run.
 */
export interface Calculation<I extends z.ZodType = z.ZodType, O extends z.ZodType = z.ZodType> {
  readonly name: string;
  readonly purpose: string;
  /** Strict objects throughout: an unknown field is refused by name. */
  readonly input: I;
  /** What the result holds; it may hold more. */
  readonly output: O;
  readonly run: (input: z.output<I>) => z.input<O>;
  readonly sources: readonly string[];
  readonly example: { readonly input: z.input<I>; readonly output: unknown };
}

export const defineCalculation = <I extends z.ZodType, O extends z.ZodType>(
  c: Calculation<I, O>,
): Calculation<I, O> => c;

type Issue = z.core.$ZodIssue;

const at = (input: unknown, path: readonly PropertyKey[]): unknown =>
  path.reduce<unknown>(
    (here, key) => (here as Record<PropertyKey, unknown> | null | undefined)?.[key],
    input,
  );

const fieldName = (path: readonly PropertyKey[]): string =>
  path
    .map((key, i) => (typeof key === "number" ? `[${key}]` : `${i > 0 ? "." : ""}${String(key)}`))
    .join("") || "input";

/** A shape that takes one of several forms by a name, and the name is of none of them. */
const namesNoForm = (issue: Issue): issue is Issue & { readonly options: readonly z.core.util.Primitive[] } =>
  issue.code === "invalid_union" && "options" in issue && issue.options !== undefined;

function limitsOfIssue(issue: Issue): { min?: number; max?: number; allowed?: string[] } | undefined {
  if (issue.code === "too_small" && (issue.origin === "number" || issue.origin === "int"))
    return { min: Number(issue.minimum) };
  if (issue.code === "too_big" && (issue.origin === "number" || issue.origin === "int"))
    return { max: Number(issue.maximum) };
  if (issue.code === "invalid_value") return { allowed: issue.values.map(String) };
  if (namesNoForm(issue)) return { allowed: issue.options.map(String) };
  return undefined;
}

/** Of the shapes a union could have taken, the one the input comes nearest to says what is wrong with it. */
function nearest(issue: Issue): Issue {
  if (issue.code !== "invalid_union" || issue.errors.length === 0) return issue;
  const [best] = [...issue.errors].sort(
    (a, b) => a.length - b.length || (b[0]?.path.length ?? 0) - (a[0]?.path.length ?? 0),
  );
  const inner = best?.[0];
  return inner === undefined ? issue : nearest({ ...inner, path: [...issue.path, ...inner.path] });
}

const kinds: Readonly<Record<string, string>> = {
  number: "A number",
  int: "A whole number",
  string: "Text",
  boolean: "true or false",
  array: "A list",
  object: "An object with named fields",
};

/** What would do, where neither a range nor a list of names says it. */
function because(issue: Issue): { readonly because?: string } {
  if (issue.code === "custom") return { because: `${issue.message}.` };
  if (issue.code === "invalid_type")
    return { because: `${kinds[issue.expected] ?? issue.expected} would do.` };
  if (issue.code === "too_small" && issue.origin === "array")
    return { because: `It holds too few: ${Number(issue.minimum)} or more would do.` };
  if (issue.code === "too_big" && issue.origin === "array")
    return { because: `It holds too many: ${Number(issue.maximum)} or fewer would do.` };
  return {};
}

/** The first thing wrong with an input, in the one shape that every door uses; `namesKnown` says the fields at a path. */
export function problemFromIssues(
  issues: readonly Issue[],
  input: unknown,
  namesKnown: (path: readonly PropertyKey[]) => readonly string[] = () => [],
): Problem {
  const issue = nearest(issues[0] as Issue);
  if (issue.code === "unrecognized_keys") {
    const path = [...issue.path, issue.keys[0] as string];
    const allowed = namesKnown(issue.path);
    const limits = allowed.length === 0 ? {} : { limits: { allowed } };
    const detail = {
      code: "unknown-field",
      field: fieldName(path),
      value: at(input, path),
      ...limits,
    } as const;
    return problemFromDomain(detail);
  }
  const value = at(input, issue.path);
  const limits = limitsOfIssue(issue);
  const code =
    value === undefined
      ? "missing"
      : issue.code === "too_small" || issue.code === "too_big"
        ? "out-of-range"
        : issue.code === "invalid_value" || namesNoForm(issue)
          ? "unknown-name"
          : "wrong-type";
  return problemFromDomain({
    code,
    field: fieldName(issue.path),
    value,
    ...(limits === undefined ? {} : { limits }),
    ...because(issue),
  });
}

/** Reads and runs: every door calls this and nothing else, so all four give the same answers and refusals. */
export function calculate(calculation: Calculation, input: unknown): Result<unknown, Problem> {
  const read = calculation.input.safeParse(input);
  if (!read.success)
    return fail(problemFromIssues(read.error.issues, input, (path) => namesAt(calculation.input, path)));
  try {
    return ok(calculation.run(read.data));
  } catch (error) {
    if (error instanceof DomainError) return fail(problemFromDomain(error.detail));
    throw error;
  }
}
