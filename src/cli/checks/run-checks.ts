import { existsSync, readdirSync, statSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import type { Effects } from "../effects.ts";
import { largestResiduals } from "./largest-residuals.ts";
import { exitCodeFor, jsonOf, linesOf, summary, type TopicReport, unreadLine } from "./report.ts";
import { runTopic } from "./run-topic.ts";
import { loadTopic } from "./topics.ts";

const ownCopy = fileURLToPath(new URL("../../../test/check-values/", import.meta.url));

const usage = `Computes the cases that others published or certified, and compares.

  npm run checks -- [TOPIC …] [--cases DIR] [--json | --brief]

  TOPIC        one of the folders below; all of them when left out
  --cases DIR  read this folder in place of the project's copy of TOPIC
  --json       one JSON document on standard output
  --brief      only what failed or was not read, and the counts
  --topics     only the names of the topics, one a line

Exit 0 all passed; 1 a case failed; 2 wrong arguments; 3 a case was not read; 4 no case was found.
`;

const folderOf = (topic: string): string =>
  join(ownCopy, topic === "calc" || topic === "solutions" ? topic : join("trials", topic));

const knownTopics = (): string[] => [
  "calc",
  "solutions",
  ...readdirSync(join(ownCopy, "trials")).filter((name) => statSync(folderOf(name)).isDirectory()),
];

interface Arguments {
  readonly names: readonly string[];
  readonly cases: string | undefined;
  readonly json: boolean;
  readonly brief: boolean;
}

function readArguments(argv: readonly string[]): Arguments | string {
  const options = {
    cases: { type: "string" },
    json: { type: "boolean" },
    brief: { type: "boolean" },
  } as const;
  let parsed: ReturnType<typeof parseArgs<{ options: typeof options; allowPositionals: true }>>;
  try {
    parsed = parseArgs({ args: [...argv], options, allowPositionals: true });
  } catch (error) {
    if (error instanceof TypeError) return `${error.message.split(". ")[0]}.`;
    throw error;
  }
  const { values, positionals } = parsed;
  const known = knownTopics();
  const unknown = positionals.find((name) => !known.includes(name));
  if (unknown !== undefined) return `${unknown} is not a topic. These are: ${known.join(", ")}.`;
  if (values.cases !== undefined && positionals.length !== 1)
    return "--cases replaces the folder of one TOPIC: name it.";
  if (values.cases !== undefined && statSync(values.cases, { throwIfNoEntry: false })?.isFile() === true)
    return `${values.cases} is a file: --cases takes the folder that it is in.`;
  return {
    names: positionals.length === 0 ? known : positionals,
    cases: values.cases,
    json: values.json === true,
    brief: values.brief === true,
  };
}

/** The outside-check runner: returns the exit code. */
export async function runChecks(argv: readonly string[], effects: Effects): Promise<number> {
  if (argv.includes("--topics")) {
    effects.stdout(`${knownTopics().join("\n")}\n`);
    return 0;
  }
  if (argv.includes("--help")) {
    effects.stdout(`${usage}\nTopics: ${knownTopics().join(", ")}\n`);
    return 0;
  }
  const given = readArguments(argv);
  if (typeof given === "string") {
    effects.stderr(`${given}\n\n${usage}`);
    return 2;
  }
  const reports: TopicReport[] = [];
  for (const name of given.names) {
    const report = await checkTopic(name, given.cases);
    reports.push(report);
    if (given.json) continue;
    print(report, given.brief, effects);
    if (given.names.length > 1) effects.stdout(`${summary(report)}\n`);
  }
  if (given.json) effects.stdout(`${jsonOf(given.names.length === 1 ? reports[0] : reports)}\n`);
  const total = {
    topic: given.names.length === 1 ? (given.names[0] as string) : "all",
    passed: sum(reports, (r) => r.passed),
    failed: sum(reports, (r) => r.failed),
    notRead: sum(reports, (r) => r.notRead),
  };
  (given.json ? effects.stderr : effects.stdout)(`${summary(total)}\n`);
  return exitCodeFor(total);
}

const sum = (reports: readonly TopicReport[], of: (r: TopicReport) => number): number =>
  reports.reduce((total, r) => total + of(r), 0);

async function checkTopic(name: string, cases: string | undefined): Promise<TopicReport> {
  const folder = cases ?? folderOf(name);
  if (!existsSync(folder))
    return { topic: name, passed: 0, failed: 0, notRead: 0, cases: [], unread: [], sources: {} };
  return runTopic(name, await loadTopic(name), { cases: folder, constants: folderOf(name) });
}

function print(report: TopicReport, brief: boolean, effects: Effects): void {
  const cases = brief ? report.cases.filter((c) => c.outcome === "failed") : report.cases;
  for (const c of cases) for (const line of linesOf(c)) effects.stdout(`${line}\n`);
  for (const u of report.unread) effects.stdout(`${unreadLine(u)}\n`);
  if (!brief) for (const line of largestResiduals(report)) effects.stdout(`${line}\n`);
}
