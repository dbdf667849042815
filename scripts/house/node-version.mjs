// Imported first by every command, and written so that an old Node can read it and be told plainly.
import { readFileSync } from "node:fs";

const numbers = (version) =>
  version
    .replace(/^[^0-9]*/, "")
    .split(".")
    .map(Number);

/** What is wrong with this Node, or undefined. `wanted` is the `engines` of package.json: `>=20.19`. */
export function nodeProblem(version, wanted) {
  const have = numbers(version);
  const least = numbers(wanted);
  for (let i = 0; i < least.length; i++) {
    if (have[i] > least[i]) return undefined;
    if (have[i] < least[i]) {
      return (
        `Lacbench needs Node ${least.join(".")} or newer; this is Node ${version}.\n` +
        "Install a newer Node (https://nodejs.org, or your system's packages), then run the same command again."
      );
    }
  }
  return undefined;
}

const { engines } = JSON.parse(readFileSync(new URL("../../package.json", import.meta.url), "utf8"));
const problem = nodeProblem(process.versions.node, engines.node);
if (problem !== undefined) {
  process.stderr.write(`${problem}\n`);
  process.exit(1);
}
