import { fileURLToPath } from "node:url";

/** The project's folder, without a slash at the end. */
export const root = fileURLToPath(new URL("../..", import.meta.url)).replace(/[\\/]$/, "");

/** Words go to stderr: stdout belongs to what was asked for. */
export const say = (text) => process.stderr.write(`${text}\n`);
