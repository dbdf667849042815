// Runs the `@example` of every function that the core exports. Ends with `N passed, N failed`.
import "./house/node-version.mjs";
import { relative } from "node:path";
import { pathToFileURL } from "node:url";
import { exportedFunctions, sourcesUnder } from "./docs/exported-functions.mjs";
import { runExamples } from "./docs/run-example.mjs";
import { ensureBuilt } from "./house/build.mjs";
import { root } from "./house/root.mjs";

await ensureBuilt("program");

const modules = await Promise.all(
  sourcesUnder(`${root}/src/core`).map(async ({ file, text }) => {
    const built = file.replace(`${root}/src/`, `${root}/dist/`).replace(/\.ts$/, ".js");
    return { file, text, exports: await import(pathToFileURL(built).href) };
  }),
);

/** What an example may name: its own module's exports, the units, and every name that only one module exports. */
function scopeFor(own) {
  const units = modules.find(({ file }) => file.endsWith("/core/units.ts")).exports;
  const scope = {};
  const twice = new Set();
  for (const { exports } of modules) {
    for (const [name, value] of Object.entries(exports)) {
      if (name in scope && scope[name] !== value) twice.add(name);
      scope[name] = value;
    }
  }
  for (const name of twice) delete scope[name];
  return { ...scope, ...units, ...own.exports };
}

let passed = 0;
let failed = 0;
for (const module of modules) {
  for (const { name, line, doc } of exportedFunctions(module.file, module.text)) {
    if (!doc?.includes("@example")) continue;
    const results = runExamples(doc, scopeFor(module));
    if (results.length === 0) results.push({ code: "@example", wrong: "it holds no `// => value`" });
    for (const { code, wrong } of results) {
      if (wrong === undefined) passed++;
      else {
        failed++;
        console.log(`${relative(root, module.file)}:${line} ${name}\n  ${code}\n  gave ${wrong}`);
      }
    }
  }
}
console.log(`${passed} passed, ${failed} failed`);
if (failed > 0) process.exitCode = 1;
