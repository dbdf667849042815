// Made-up trials in which the truth is known, 10 000 of each kind: what intervals and words say of themselves must come true.
// `npm run calibrate` for all, `npm run calibrate -- verdicts --runs 1000` for a part. Prints one figure a line; fails beyond a limit.
import "./house/node-version.mjs";
import { readdirSync } from "node:fs";
import { parseArgs } from "node:util";
import { ensureBuilt } from "./house/build.mjs";
import { ensureInstalled } from "./house/install.mjs";
import { root } from "./house/root.mjs";

await ensureInstalled();
await ensureBuilt("program");

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: { runs: { type: "string", default: "10000" } },
});
const runs = Number(values.runs);
const parts = readdirSync(`${root}/scripts/calibrate`)
  .filter((file) => file.endsWith(".mjs"))
  .map((file) => file.slice(0, -".mjs".length));
const unknown = positionals.filter((name) => !parts.includes(name));
if (unknown.length > 0 || !(runs >= 100)) {
  console.error(`There is: ${parts.join(", ")}; --runs of 100 or more.`);
  process.exit(2);
}

let beyond = 0;
for (const part of positionals.length > 0 ? positionals : parts) {
  const { figures } = await import(`./calibrate/${part}.mjs`);
  for await (const { name, value, atLeast = 0, atMost = 1, digits = 2 } of figures(runs)) {
    const good = value >= atLeast && value <= atMost;
    if (!good) beyond++;
    const limits = `${(100 * atLeast).toFixed(1)} to ${(100 * atMost).toFixed(1)} %`;
    console.log(`${good ? "✓" : "✗"} ${name}: ${(100 * value).toFixed(digits)} %  (${limits})`);
  }
}
console.log(beyond === 0 ? "all within their limits" : `${beyond} beyond the limits`);
process.exitCode = beyond === 0 ? 0 : 1;
