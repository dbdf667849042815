import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterEach, beforeEach, expect, test } from "vitest";
import { listen } from "../../../test/listen.ts";
import { realEffects } from "../effects.ts";
import { runChecks } from "./run-checks.ts";

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "lacbench-checks-"));
});
afterEach(() => rmSync(folder, { recursive: true }));

async function run(...argv: string[]) {
  const { said, outputs } = listen();
  const code = await runChecks(argv, {
    ...realEffects,
    ...outputs,
  });
  return { ...said, code, last: said.stdout.trim().split("\n").at(-1) };
}

test("a topic passes, the last line counts, and each quantity has its line", async () => {
  const { code, stdout, last } = await run("colour");
  expect([code, last]).toEqual([0, "colour: 39 passed, 0 failed, 0 not read"]);
  expect(stdout.split("\n").filter((line) => line.endsWith("\tok")).length).toBeGreaterThan(39);
});

test("another folder replaces the topic's own: its wrong value fails, its missing cases are not looked for", async () => {
  const own = fileURLToPath(
    new URL("../../../test/check-values/trials/colour/ciede2000-sharma.csv", import.meta.url),
  );
  cpSync(own, join(folder, "ciede2000-sharma.csv"));
  expect((await run("colour", "--cases", folder)).last).toBe("colour: 23 passed, 0 failed, 0 not read");
  const wrong = readFileSync(own, "utf8").replace(",2.0425,", ",2.0427,");
  writeFileSync(join(folder, "ciede2000-sharma.csv"), wrong);
  const { code, last, stdout } = await run("colour", "--cases", folder, "--brief");
  expect([code, last]).toEqual([1, "colour: 22 passed, 1 failed, 0 not read"]);
  expect(stdout).toContain("FAILED");
});

test("a topic that nothing here computes is all not read", async () => {
  writeFileSync(
    join(folder, "c.json"),
    JSON.stringify({ format: "cases/1", cases: [{ id: "a", kind: "calendar-sample" }] }),
  );
  expect(await run("calendar", "--cases", folder)).toMatchObject({
    code: 3,
    last: "calendar: 0 passed, 0 failed, 1 not read",
  });
});

test("no case at all", async () => {
  expect(await run("colour", "--cases", folder)).toMatchObject({
    code: 4,
    last: "colour: 0 passed, 0 failed, 0 not read",
  });
  expect((await run("colour", "--cases", join(folder, "none"))).code).toBe(4);
});

test.each([
  ["nowhere"],
  ["--cases", "x"],
  ["colour", "--case", "x"],
  ["colour", "--cases", fileURLToPath(import.meta.url)],
])("%s %s are wrong arguments", async (...argv) => {
  const { code, stdout, stderr } = await run(...argv);
  expect([code, stdout]).toEqual([2, ""]);
  expect(stderr).toContain("npm run checks");
});

test("as JSON: one document", async () => {
  const { stdout, code } = await run("colour", "--json");
  expect(code).toBe(0);
  expect(JSON.parse(stdout)).toMatchObject({ topic: "colour", passed: 39, failed: 0, notRead: 0 });
});
