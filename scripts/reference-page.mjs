// Writes docs/calculations.md from the registered calculations; with --check, fails where the page is not as new as they are.
import "./house/node-version.mjs";
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { ensureBuilt } from "./house/build.mjs";
import { root } from "./house/root.mjs";

await ensureBuilt("program");
const { calculations } = await import("../dist/core/registry/all.js");
const { referencePage } = await import("../dist/cli/reference/page.js");

const file = join(root, "docs/calculations.md");
const page = referencePage(calculations);
if (!process.argv.includes("--check")) writeFileSync(file, page);
else if (!existsSync(file) || readFileSync(file, "utf8") !== page) {
  console.error(
    "docs/calculations.md is not as new as the calculations: node scripts/reference-page.mjs writes it.",
  );
  process.exitCode = 1;
}
