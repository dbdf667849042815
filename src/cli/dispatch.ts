import { relative } from "node:path";
import { DomainError } from "../core/domain-error.ts";
import { problemFromDomain } from "../core/registry/problem.ts";
import { CliError, refused } from "./cli-error.ts";
import { type Command, helpText, readArguments } from "./command.ts";
import { type CommandEntry, commands } from "./commands.ts";
import type { Effects } from "./effects.ts";

/** Runs the command that the arguments name; returns the exit code. Every error ends here, and is said once. */
export async function dispatch(argv: readonly string[], effects: Effects): Promise<number> {
  const [name, ...args] = argv;
  if (name === undefined || name === "--help" || name === "-h" || name === "help") {
    (name === undefined ? effects.stderr : effects.stdout)(overview());
    return name === undefined ? 2 : 0;
  }
  const say = { json: args.includes("--json"), debug: args.includes("--debug") };
  try {
    const entry = commands.find((c) => c.name === name);
    if (entry === undefined) throw unknownCommand(name);
    const { command } = await entry.load();
    say.json ||= command.alwaysJson === true;
    await runCommand(entry, command, args, effects);
    return 0;
  } catch (error) {
    return explain(error, say, effects);
  }
}

async function runCommand(entry: CommandEntry, command: Command, args: readonly string[], effects: Effects) {
  if (args.includes("--help") || args.includes("-h")) return effects.stdout(helpText(entry.purpose, command));
  return command.run(readArguments(command, args), effects);
}

function overview(): string {
  const width = Math.max(...commands.map((c) => c.name.length));
  const list = commands.map((c) => `  ${c.name.padEnd(width)}  ${c.purpose}`).join("\n");
  return `Lacbench: a bench book for spirit finishes.\n\n${list}\n\nlacbench COMMAND --help says more of each.\n`;
}

function unknownCommand(name: string): CliError {
  const message = `"${name}" is not a command. lacbench --help lists them.`;
  return refused({ code: "unknown-name", field: "command", message, value: name, limits: null });
}

const whyNoFile: Readonly<Record<string, string>> = {
  ENOENT: "there is no such file or folder",
  EACCES: "it may not be opened",
};

/** A file that was named and cannot be opened is no fault of the program. */
function fileProblem(error: unknown, effects: Effects): unknown {
  const { code = "", path } = error as NodeJS.ErrnoException;
  const why = whyNoFile[code];
  if (why === undefined || path === undefined) return error;
  const field = relative(effects.cwd, path);
  return refused({ code: "unreadable", field, message: `${field}: ${why}.`, value: field, limits: null });
}

/** One problem on standard error: words, or JSON where that was asked for. A trace only on request. */
function explain(error: unknown, say: { json: boolean; debug: boolean }, effects: Effects): number {
  const known =
    error instanceof DomainError ? refused(problemFromDomain(error.detail)) : fileProblem(error, effects);
  if (say.debug && error instanceof Error) effects.stderr(`${error.stack}\n`);
  if (known instanceof CliError) {
    effects.stderr(say.json ? `${JSON.stringify(known.problem)}\n` : `${known.message}\n`);
    return known.exitCode;
  }
  const words = error instanceof Error ? error.message : String(error);
  const message = `Lacbench itself went wrong: ${words}. With --debug it says where.`;
  const problem = { code: "internal", field: "command", message, value: null, limits: null };
  effects.stderr(say.json ? `${JSON.stringify(problem)}\n` : `${message}\n`);
  return 1;
}
