// Builds dist/ and checks every TypeScript project. `--no-pages` leaves the pages out; `--plain` makes dist/plain alone: the pages for a host that keeps no notebook.
import "./house/node-version.mjs";
import { build } from "./house/build.mjs";

const asked = (option) => process.argv.includes(option);
const names = asked("--plain")
  ? ["plain files"]
  : ["program", "types", ...(asked("--no-pages") ? [] : ["pages"])];
if (!(await build(...names))) process.exitCode = 1;
