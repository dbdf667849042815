import { parseArgs } from "node:util";
import { problemFromDomain } from "../core/registry/problem.ts";
import { type CliError, refused } from "./cli-error.ts";
import type { Effects } from "./effects.ts";

export interface OptionSpec {
  readonly type: "string" | "boolean";
  readonly description: string;
  readonly short?: string;
  readonly multiple?: boolean;
  /** How the value is shown in the help: `FILE`, `2lb`. */
  readonly value?: string;
}
export type OptionSpecs = Readonly<Record<string, OptionSpec>>;

type ValueOf<O extends OptionSpec> = O["type"] extends "boolean"
  ? boolean
  : O["multiple"] extends true
    ? readonly string[]
    : string;

export interface Given<O extends OptionSpecs> {
  /** Only what was typed: no option has a default that a command does not see. */
  readonly values: { readonly [K in keyof O]?: ValueOf<O[K]> } & { readonly json?: boolean };
  readonly positionals: readonly string[];
}

export interface Command<O extends OptionSpecs = OptionSpecs> {
  /** What follows `lacbench`: `calc [NAME] < in.json`. */
  readonly usage: string;
  /** The most positional arguments that it takes. */
  readonly positionals: number;
  readonly options: O;
  /** One that speaks JSON whatever the options, refusals too. */
  readonly alwaysJson?: boolean;
  readonly run: (given: Given<O>, effects: Effects) => Promise<void> | void;
}

/** Erases the options' types once checked, so that all commands fit one table. */
export const defineCommand = <const O extends OptionSpecs>(command: Command<O>): Command =>
  command as unknown as Command;

const common = {
  json: { type: "boolean", description: "JSON on standard output, and a refusal as one JSON problem" },
  help: { type: "boolean", short: "h", description: "these words" },
  debug: { type: "boolean", description: "the full trace of what went wrong" },
} as const satisfies OptionSpecs;

export function readArguments(command: Command, args: readonly string[]): Given<OptionSpecs> {
  try {
    const { values, positionals } = parseArgs({
      args: [...args],
      options: { ...command.options, ...common },
      allowPositionals: true,
    });
    const extra = positionals[command.positionals];
    if (extra !== undefined) throw unexpected("argument", extra, `"${extra}" is one argument too many.`);
    return { values: values as Given<OptionSpecs>["values"], positionals };
  } catch (error) {
    if (
      !(error instanceof TypeError) ||
      !String((error as NodeJS.ErrnoException).code).startsWith("ERR_PARSE_ARGS")
    )
      throw error;
    throw optionProblem(command, error);
  }
}

function optionProblem(command: Command, error: Error): CliError {
  const [, option = "option"] = /'(-[^' ]+)/.exec(error.message) ?? [];
  if ((error as NodeJS.ErrnoException).code !== "ERR_PARSE_ARGS_UNKNOWN_OPTION")
    return unexpected(option, null, `${error.message.split(". ")[0]}.`);
  const allowed = Object.keys({ ...command.options, ...common }).map((name) => `--${name}`);
  return refused(
    problemFromDomain({ code: "unknown-field", field: option, value: undefined, limits: { allowed } }),
  );
}

const unexpected = (field: string, value: unknown, message: string) =>
  refused({ code: "unknown-field", field, message, value, limits: null });

export function helpText(purpose: string, command: Command): string {
  const rows = Object.entries<OptionSpec>({ ...command.options, ...common }).map(([name, option]) => {
    const short = option.short === undefined ? "" : `-${option.short}, `;
    const value = option.type === "boolean" ? "" : ` ${option.value ?? "TEXT"}`;
    return [`${short}--${name}${value}`, option.description] as const;
  });
  const width = Math.max(...rows.map(([left]) => left.length));
  const options = rows.map(([left, right]) => `  ${left.padEnd(width)}  ${right}`).join("\n");
  return `${purpose}\n\n  lacbench ${command.usage}\n\n${options}\n`;
}
