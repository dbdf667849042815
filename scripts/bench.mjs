// Runs every bench/*.bench.mjs, or those named: one figure a line, beside its limit and its peer. Fails when a limit is passed.
import "./house/node-version.mjs";
import { readdirSync } from "node:fs";
import { ensureBuilt } from "./house/build.mjs";
import { ensureInstalled } from "./house/install.mjs";
import { root } from "./house/root.mjs";

await ensureInstalled();
await ensureBuilt("program", "pages");

const names = readdirSync(`${root}/bench`)
  .filter((file) => file.endsWith(".bench.mjs"))
  .map((file) => file.slice(0, -".bench.mjs".length));
const asked = process.argv.slice(2);
const unknown = asked.filter((name) => !names.includes(name));
if (unknown.length > 0) {
  console.error(`There is no bench ${unknown.join(", ")}. There are: ${names.join(", ")}.`);
  process.exit(2);
}

const shown = (x) => (Math.abs(x) >= 100 ? x.toFixed(0) : x.toPrecision(3));

function line({ name, value, unit, atMost, peer }) {
  const good = atMost === undefined || value <= atMost;
  const limit = atMost === undefined ? "" : `  at most ${shown(atMost)} ${unit}`;
  const ratio =
    peer === undefined ? "" : `  ${shown(value / peer.value)} × ${peer.name} (${shown(peer.value)} ${unit})`;
  return `${good ? "✓" : "✗"} ${name}: ${shown(value)} ${unit}${limit}${ratio}`;
}

let beyond = 0;
for (const name of asked.length > 0 ? asked : names) {
  const { figures } = await import(`../bench/${name}.bench.mjs`);
  for (const figure of await figures()) {
    console.log(line(figure));
    if (!(figure.value <= (figure.atMost ?? Number.POSITIVE_INFINITY))) beyond++;
  }
}
if (beyond > 0) {
  console.log(`${beyond} beyond the limit`);
  process.exitCode = 1;
}
