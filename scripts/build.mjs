// Builds dist/ and checks every TypeScript project. `--no-pages` leaves the pages out.
import "./house/node-version.mjs";
import { build } from "./house/build.mjs";

const names = process.argv.includes("--no-pages") ? ["program", "types"] : ["program", "types", "pages"];
if (!(await build(...names))) process.exitCode = 1;
