import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { installProblem } from "./install.mjs";
import { root } from "./root.mjs";

let folder;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "lacbench-install-"));
});
afterEach(() => rmSync(folder, { recursive: true }));

const list = (packages) => JSON.stringify({ packages });
const wanted = {
  "": { name: "shop" },
  "node_modules/jar": { version: "1.2.0" },
  "node_modules/jar-for-another-machine": { version: "1.2.0", optional: true },
};
function installed(version) {
  mkdirSync(join(folder, "node_modules/jar"), { recursive: true });
  writeFileSync(join(folder, "package-lock.json"), list(wanted));
  writeFileSync(join(folder, "node_modules/.package-lock.json"), list({ "node_modules/jar": { version } }));
}

test("this project's own install will do", () => {
  expect(installProblem(root)).toBeUndefined();
});

test("nothing installed, and an install that was stopped half-way", () => {
  expect(installProblem(folder)).toBe("nothing is installed yet");
  mkdirSync(join(folder, "node_modules"));
  expect(installProblem(folder)).toBe("the last install did not finish");
});

test("another version than the lock file asks for", () => {
  installed("1.1.0");
  expect(installProblem(folder)).toBe("jar 1.2.0 is wanted, 1.1.0 is installed");
});

test("a package whose folder was emptied", () => {
  installed("1.2.0");
  expect(installProblem(folder)).toBe("jar is missing");
});

test("all packages there but the compiled part", () => {
  installed("1.2.0");
  writeFileSync(join(folder, "node_modules/jar/package.json"), "{}");
  expect(installProblem(folder)).toContain("better-sqlite3 was not built for Node");
});
