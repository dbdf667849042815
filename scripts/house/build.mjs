import { createHash } from "node:crypto";
import { existsSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { withLock } from "./lock.mjs";
import { root, say } from "./root.mjs";
import { runNode } from "./run.mjs";

/** The folder of a site that the plain files are to lie in. */
const plainBase = process.env.LACBENCH_BASE ?? "/";

const everywhere = ["package.json", "package-lock.json", "tsconfig.base.json", "src/core"];
const ours = (name) => !/\.(test|contract)\.tsx?$/.test(name);

const tsc = (args, onStart) => runNode("node_modules/typescript/bin/tsc", ["-b", ...args], { onStart });

const vite = (args, onStart) =>
  runNode("node_modules/vite/bin/vite.js", ["build", "--logLevel", "error", ...args], { onStart });
const pagesFrom = [
  ...everywhere,
  ...["vite.config.ts", "scripts/pages", "src/web", "src/service-worker", "src/server/page-policy.ts"],
];

/** The parts that can be built, what each is made from, and how. One without `from` is looked at every time. */
const parts = {
  program: {
    from: [...everywhere, "src/store", "src/server", "src/cli"],
    made: "dist/cli/bin.js",
    make: (onStart, lost) => tsc(lost ? ["src/cli", "--force"] : ["src/cli"], onStart),
  },
  pages: {
    from: pagesFrom,
    made: "dist/web/index.html",
    make: (onStart) => vite([], onStart),
  },
  "plain files": {
    from: pagesFrom,
    made: "dist/plain/index.html",
    make: (onStart) => vite(["--mode", "no-house", "--base", plainBase], onStart),
    as: plainBase,
  },
  types: { make: (onStart) => tsc([], onStart) },
};

function* filesUnder(path) {
  const stat = statSync(path, { throwIfNoEntry: false });
  if (stat === undefined) return;
  if (!stat.isDirectory()) {
    yield `${path} ${stat.size} ${stat.mtimeMs}`;
    return;
  }
  for (const name of readdirSync(path).filter(ours).sort()) yield* filesUnder(join(path, name));
}

/** Names, sizes and times of all that a part is made from: a deleted or older file counts as much as a newer one. */
function signature(part) {
  const hash = createHash("sha256").update(part.as ?? "");
  for (const path of part.from) for (const file of filesUnder(join(root, path))) hash.update(`${file}\n`);
  return hash.digest("hex");
}

const stampOf = (name) => join(root, "dist", `.${name}`);
const isThere = (part) => part.made !== undefined && existsSync(join(root, part.made));

function isFresh(name) {
  const part = parts[name];
  if (part.from === undefined || !isThere(part) || !existsSync(stampOf(name))) return false;
  return readFileSync(stampOf(name), "utf8") === signature(part);
}

async function make(name, alsoHeldBy) {
  const part = parts[name];
  const before = part.from && signature(part); // what is edited during the build is built next time
  rmSync(stampOf(name), { force: true });
  if ((await part.make(alsoHeldBy, !isThere(part))) !== 0) return false;
  if (before !== undefined) writeFileSync(stampOf(name), before);
  return true;
}

async function makeAll(names, alsoHeldBy) {
  if (names.length === 0) return true; // another command did it while this one waited
  say(`Building ${names.map((name) => `the ${name}`).join(", ")}.`);
  const start = performance.now();
  for (const name of names) if (!(await make(name, alsoHeldBy))) return false;
  say(`Built in ${((performance.now() - start) / 1000).toFixed(1)} s.`);
  return true;
}

/** Builds those of the named parts that are not fresh; false when one could not be built. */
export async function build(...names) {
  const stale = () => names.filter((name) => !isFresh(name));
  if (stale().length === 0) return true;
  return withLock(
    join(root, "dist/.build.lock"),
    (alsoHeldBy) => makeAll(stale(), alsoHeldBy),
    (pid) => say(`Waiting for another Lacbench command (process ${pid}) to finish building.`),
  );
}

/** Sees to it that dist/ is there and as new as the source; ends with a plain message when it cannot be built. */
export async function ensureBuilt(...names) {
  if (await build(...names)) return;
  say("Lacbench could not be built; the messages above say where.");
  process.exit(1);
}
