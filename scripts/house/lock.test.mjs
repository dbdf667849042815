import { spawn, spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { withLock } from "./lock.mjs";

let folder;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "lacbench-lock-"));
});
afterEach(() => rmSync(folder, { recursive: true }));

const deadPid = () => spawnSync(process.execPath, ["-e", ""]).pid;
const quiet = () => {};

test("a holder that was killed does not keep the lock", async () => {
  const path = join(folder, "lock");
  writeFileSync(path, String(deadPid()));
  expect(await withLock(path, () => "done", quiet)).toBe("done");
  expect(existsSync(path)).toBe(false);
});

test("a child that outlives its killed parent keeps the lock until it ends", async () => {
  const path = join(folder, "lock");
  const child = spawn(process.execPath, ["-e", "setTimeout(() => {}, 600)"]);
  writeFileSync(path, `${deadPid()} ${child.pid}`);
  let waitedFor;
  await withLock(path, quiet, (pid) => {
    waitedFor = pid;
  });
  expect(waitedFor).toBeDefined();
  expect(child.exitCode).toBe(0);
});

test("the lock is given back when the work fails", async () => {
  const path = join(folder, "lock");
  const work = () => Promise.reject(new Error("broken"));
  await expect(withLock(path, work, quiet)).rejects.toThrow("broken");
  expect(existsSync(path)).toBe(false);
});

test("eight processes that find a killed holder's lock work one after another", async () => {
  const path = join(folder, "lock");
  const log = join(folder, "log");
  writeFileSync(path, String(deadPid()));
  const program = `
    import { appendFileSync } from "node:fs";
    import { setTimeout as pause } from "node:timers/promises";
    import { withLock } from ${JSON.stringify(new URL("./lock.mjs", import.meta.url).href)};
    await withLock(${JSON.stringify(path)}, async () => {
      appendFileSync(${JSON.stringify(log)}, "in ");
      await pause(30);
      appendFileSync(${JSON.stringify(log)}, "out ");
    }, () => {});`;
  const ended = Array.from(
    { length: 8 },
    () =>
      new Promise((resolve) => {
        spawn(process.execPath, ["--input-type=module", "-e", program]).on("exit", resolve);
      }),
  );
  expect(await Promise.all(ended)).toEqual(Array(8).fill(0));
  expect(readFileSync(log, "utf8")).toBe("in out ".repeat(8));
});
