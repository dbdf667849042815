import { spawn } from "node:child_process";
import { root } from "./root.mjs";

const passedOn = ["SIGINT", "SIGTERM", "SIGHUP"];

/**
 * Runs a program in the project's folder and gives its exit code. Its output goes to our stderr unless told.
 * A signal that ends us ends it first.
 */
export function run(command, args, { output = "stderr", env = process.env, onStart } = {}) {
  const out = output === "stderr" ? 2 : "inherit";
  return new Promise((resolve, reject) => {
    const child = spawn(command, args, { cwd: root, env, stdio: ["ignore", out, 2] });
    if (child.pid !== undefined) onStart?.(child.pid);
    let stoppedBy;
    const stop = (signal) => {
      stoppedBy = signal;
      child.kill(signal);
    };
    for (const signal of passedOn) process.on(signal, stop);
    const settle = (act) => {
      for (const signal of passedOn) process.off(signal, stop);
      if (stoppedBy === undefined) act();
      else process.kill(process.pid, stoppedBy);
    };
    child.on("error", (error) => settle(() => reject(error)));
    child.on("exit", (code, signal) => settle(() => resolve(code ?? (signal === null ? 0 : 1))));
  });
}

/** Runs a script of an installed package, or of ours, with this Node. */
export const runNode = (script, args, options) => run(process.execPath, [script, ...args], options);
