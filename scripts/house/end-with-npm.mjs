import { readFileSync } from "node:fs";
import { isRunning } from "./lock.mjs";

/** The parent of another process where the system tells (Linux); elsewhere the shell below npm steps aside and ours is npm. */
function parentOf(pid) {
  try {
    // pid (name, which may hold anything) state parent …
    return Number(readFileSync(`/proc/${pid}/stat`, "utf8").split(") ").at(-1).split(" ")[1]);
  } catch (error) {
    if (error.code === "ENOENT") return undefined;
    throw error;
  }
}

/**
 * Ends this process as SIGTERM does when the npm that started it has ended. npm passes a signal on to a shell, and that
 * shell does not pass it on: without this, stopping `npm start` would leave the server behind, holding its port.
 */
export function endWithNpm(env = process.env) {
  if (env.npm_lifecycle_event === undefined) return;
  const shell = process.ppid;
  const npm = parentOf(shell);
  const watch = setInterval(() => {
    if (process.ppid === shell && (npm === undefined || isRunning(npm))) return;
    clearInterval(watch);
    process.kill(process.pid, "SIGTERM");
  }, 100);
  watch.unref();
}
