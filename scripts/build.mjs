// Builds dist/: the TypeScript projects, then the pages. One build at a time: others wait for the lock.
import { spawnSync } from "node:child_process";
import { mkdirSync, rmdirSync, statSync } from "node:fs";

const lock = "node_modules/.lacbench-build-lock";
const wait = (ms) => Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, ms);
for (;;) {
  try {
    mkdirSync(lock);
    break;
  } catch (error) {
    if (error.code !== "EEXIST") throw error;
    if (Date.now() - statSync(lock).mtimeMs > 180_000) rmdirSync(lock);
    wait(200);
  }
}
const run = (command, args) => {
  const { status } = spawnSync(command, args, { stdio: "inherit" });
  if (status !== 0) process.exitCode = status ?? 1;
};
try {
  run("node_modules/.bin/tsc", ["-b"]);
  if (!process.argv.includes("--no-pages")) run("node_modules/.bin/vite", ["build", "--logLevel", "warn"]);
} finally {
  rmdirSync(lock);
}
