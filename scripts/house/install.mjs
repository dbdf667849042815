import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { withLock } from "./lock.mjs";
import { root, say } from "./root.mjs";
import { run } from "./run.mjs";

const addon = "node_modules/better-sqlite3/build/Release/better_sqlite3.node";

const packagesOf = (folder, file) => JSON.parse(readFileSync(join(folder, file), "utf8")).packages;

/** npm writes its own list last, so an install that was stopped half-way has none; what was deleted since is looked for on disk. */
function packageProblem(folder) {
  if (!existsSync(join(folder, "node_modules"))) return "nothing is installed yet";
  if (!existsSync(join(folder, "node_modules/.package-lock.json"))) return "the last install did not finish";
  const wanted = Object.entries(packagesOf(folder, "package-lock.json")).filter(([path]) => path !== "");
  const installed = packagesOf(folder, "node_modules/.package-lock.json");
  for (const [path, { version, optional }] of wanted) {
    const name = path.slice("node_modules/".length);
    const have = installed[path];
    if (have === undefined && optional) continue; // for another kind of machine
    if (have?.version !== version)
      return `${name} ${version} is wanted, ${have?.version ?? "none"} is installed`;
    if (!existsSync(join(folder, path, "package.json"))) return `${name} is missing`;
  }
  return undefined;
}

/** The database's compiled part is tied to the kind of machine and to the major version of Node. */
function addonProblem(folder) {
  try {
    process.dlopen({ exports: {} }, join(folder, addon));
    return undefined;
  } catch {
    return `better-sqlite3 was not built for Node ${process.versions.node} on this machine`;
  }
}

/** Why what is installed will not do, or undefined. */
export const installProblem = (folder) => packageProblem(folder) ?? addonProblem(folder);

function npm(args, onStart) {
  // Under `npm run -s` npm passes its silence on; a failed install must still say why.
  const all = [...args, "--loglevel=warn", "--no-progress"];
  const script = process.env.npm_execpath;
  return script?.endsWith("npm-cli.js")
    ? run(process.execPath, [script, ...all], { onStart })
    : run(process.platform === "win32" ? "npm.cmd" : "npm", all, { onStart });
}

async function install(alsoHeldBy) {
  const problem = installProblem(root);
  if (problem === undefined) return undefined; // another command did it while this one waited
  say(`Installing what Lacbench needs (${problem}). It takes a minute or two.`);
  const code = await npm(["ci", "--include=dev", "--ignore-scripts=false"], alsoHeldBy);
  return code === 0 ? installProblem(root) : `npm ci ended with code ${code}`;
}

/** Sees to it that node_modules holds what package-lock.json asks for; ends with a plain message when it cannot. */
export async function ensureInstalled() {
  if (installProblem(root) === undefined) return;
  const still = await withLock(join(root, "dist/.install.lock"), install, (pid) =>
    say(`Waiting for another Lacbench command (process ${pid}) to finish installing.`),
  );
  if (still === undefined) return;
  say(
    `The install did not work: ${still}.\n` +
      "Lacbench needs the network once, and where no ready-made better-sqlite3 can be had, python3, make and a C++ compiler.\n" +
      "Put right what npm says above, then run the same command again.",
  );
  process.exit(1);
}
