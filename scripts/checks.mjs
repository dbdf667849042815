// The outside-check runner from a clone: built on demand, then run in this process with stdout untouched.
import "./house/node-version.mjs";
import { ensureBuilt } from "./house/build.mjs";
import { ensureInstalled } from "./house/install.mjs";

await ensureInstalled();
await ensureBuilt("program");
await import("../dist/cli/checks/main.js");
