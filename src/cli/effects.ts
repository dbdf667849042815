import { readFileSync, writeFileSync } from "node:fs";
import { text } from "node:stream/consumers";

/** What a command may do to the world outside; a test passes its own. */
export interface Effects {
  /** Data. */
  readonly stdout: (text: string) => void;
  /** Words for a person. */
  readonly stderr: (text: string) => void;
  readonly stdin: () => Promise<string>;
  readonly readFile: (path: string) => string;
  readonly writeFile: (path: string, text: string) => void;
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly cwd: string;
}

export const realEffects: Effects = {
  stdout: (words) => void process.stdout.write(words),
  stderr: (words) => void process.stderr.write(words),
  stdin: () => text(process.stdin),
  readFile: (path) => readFileSync(path, "utf8"),
  writeFile: (path, text) => writeFileSync(path, text),
  env: process.env,
  cwd: process.cwd(),
};
