import { linkSync, mkdirSync, readFileSync, rmdirSync, statSync, unlinkSync, writeFileSync } from "node:fs";
import { dirname } from "node:path";
import { setTimeout as pause } from "node:timers/promises";

const unless = (code, act) => {
  try {
    return act();
  } catch (error) {
    if (error.code !== code) throw error;
    return undefined;
  }
};

export function isRunning(pid) {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return error.code === "EPERM";
  }
}

const holders = (path) => unless("ENOENT", () => readFileSync(path, "utf8").split(" ").map(Number));

/** A link is made whole or not at all, so nobody ever reads a lock that does not say yet whose it is. */
function take(path) {
  const mine = `${path}.${process.pid}`;
  writeFileSync(mine, String(process.pid));
  try {
    linkSync(mine, path);
    return true;
  } catch (error) {
    if (error.code !== "EEXIST") throw error;
    return false;
  } finally {
    unlinkSync(mine);
  }
}

/** Takes away the lock of a holder that was killed. One at a time, and looked at again, so that a new holder's lock stays. */
function clearIfLeftBehind(path) {
  const guard = `${path}.clearing`;
  const entered = unless("EEXIST", () => mkdirSync(guard) ?? true);
  if (!entered) {
    const age = unless("ENOENT", () => Date.now() - statSync(guard).mtimeMs) ?? 0;
    if (age > 5000) unless("ENOENT", () => rmdirSync(guard));
    return;
  }
  try {
    const pids = holders(path);
    if (pids !== undefined && !pids.some(isRunning)) unlinkSync(path);
  } finally {
    unless("ENOENT", () => rmdirSync(guard));
  }
}

/**
 * Does `work` while nobody else holds the lock at `path`. `work` is given `alsoHeldBy(pid)`: a child that goes on
 * when this process is killed keeps the lock until it ends too.
 */
export async function withLock(path, work, onWait) {
  mkdirSync(dirname(path), { recursive: true });
  for (let waited = false; !take(path); await pause(100)) {
    const pids = holders(path);
    if (pids === undefined) continue;
    if (!pids.some(isRunning)) clearIfLeftBehind(path);
    else if (!waited) {
      waited = true;
      onWait(pids[0]);
    }
  }
  try {
    return await work((pid) => writeFileSync(path, `${process.pid} ${pid}`));
  } finally {
    unlinkSync(path);
  }
}
