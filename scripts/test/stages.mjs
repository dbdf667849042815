import { spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { build } from "../house/build.mjs";
import { root } from "../house/root.mjs";
import { ensureChromium } from "./chromium.mjs";
import { countOfCheck, countOfLines, countOfTopics, countOfVitest } from "./counts.mjs";
import { runCaptured } from "./run-captured.mjs";

const json = (path) => JSON.parse(readFileSync(path, "utf8"));

const check =
  (script, ...args) =>
  async () =>
    countOfCheck(await runCaptured(script, args, { minutes: 4 }));

const counting =
  (script, ...args) =>
  async () =>
    countOfLines(await runCaptured(script, args, { minutes: 6 }));

async function vitest(args, env) {
  const folder = mkdtempSync(join(tmpdir(), "lacbench-test-"));
  try {
    const report = join(folder, "report.json");
    const reporters = ["--reporter=default", "--reporter=json", `--outputFile.json=${report}`];
    const ended = await runCaptured("node_modules/vitest/vitest.mjs", ["run", ...reporters, ...args], {
      minutes: 12,
      env,
    });
    return countOfVitest(ended, readdirSync(folder).length > 0 ? json(report) : undefined);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** The quick part leaves the long simulations out. */
const tests = ({ quick }) =>
  vitest(
    ["test/web/**", ...(quick ? ["**/calibration.test.ts"] : [])].flatMap((path) => ["--exclude", path]),
  );

async function browserTests() {
  const CHROMIUM = await ensureChromium();
  const plain = await runCaptured("scripts/build.mjs", ["--plain"], {
    minutes: 4,
    env: { LACBENCH_BASE: "/shop/" }, // not the root of a site, where a forgotten folder would go unseen
  });
  return CHROMIUM === undefined || plain.code !== 0
    ? { passed: 0, failed: 1 }
    : vitest(["test/web/", "--maxWorkers=2"], { CHROMIUM });
}

/** The search for best plans takes about as long as all the other topics. */
const slowTopic = "scheduling";

/** Cases from outside, in all topics: the slow one beside the others. */
async function outsideCases() {
  const { stdout } = spawnSync(process.execPath, ["scripts/checks.mjs", "--topics"], {
    cwd: root,
    encoding: "utf8",
  });
  const others = stdout.split("\n").filter((topic) => topic !== "" && topic !== slowTopic);
  const run = (topics) => runCaptured("scripts/checks.mjs", ["--brief", ...topics], { minutes: 10 });
  const ended = await Promise.all([run([slowTopic]), run(others)]);
  const odd = ended.find(({ code }) => ![0, 1, 3].includes(code));
  const output = ended.map((one) => one.output).join("\n");
  return countOfTopics({ code: odd?.code ?? 0, output }, json(join(root, "test/complete-topics.json")));
}

async function examples() {
  const total = { passed: 0, failed: 0 };
  for (const name of readdirSync(join(root, "examples")).filter((file) => file.endsWith(".mjs"))) {
    const { passed, failed } = await check(`examples/${name}`)();
    total.passed += passed;
    total.failed += failed;
  }
  return total;
}

const built =
  (...parts) =>
  async () =>
    countOfCheck({ code: (await build(...parts)) ? 0 : 1 });

/** What `npm test` runs, in order; `slow` ones are left out of the quick part, `needsBuild` ones fail unrun when the build does. */
export const stages = [
  { name: "format and lint", run: check("node_modules/@biomejs/biome/bin/biome", "check") },
  { name: "build", run: built("program", "pages"), isBuild: true },
  { name: "types", run: built("types") },
  { name: "dead code", run: check("node_modules/knip/bin/knip.js") },
  { name: "docstrings", run: counting("scripts/docstrings.mjs") },
  { name: "docstring examples", run: counting("scripts/doctest.mjs"), needsBuild: true },
  { name: "reference page", run: check("scripts/reference-page.mjs", "--check"), needsBuild: true },
  { name: "tests", run: tests, needsBuild: true },
  { name: "outside cases", run: outsideCases, needsBuild: true },
  { name: "examples", run: examples, needsBuild: true, slow: true },
  { name: "pages in a browser", run: browserTests, needsBuild: true, slow: true },
];
