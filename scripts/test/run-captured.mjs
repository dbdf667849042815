import { spawn } from "node:child_process";
import { root } from "../house/root.mjs";

/** Runs a script with this Node, shows its output as it comes, and gives it back with the exit code. Ends it after `minutes`. */
export function runCaptured(script, args, { minutes, env = {} }) {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [script, ...args], {
      cwd: root,
      env: { ...process.env, ...env },
      stdio: ["ignore", "pipe", "pipe"],
      detached: process.platform !== "win32", // its own group, so that what it started ends with it
    });
    const endAll = (signal) => {
      try {
        process.kill(process.platform === "win32" ? child.pid : -child.pid, signal);
      } catch (error) {
        if (error.code !== "ESRCH") throw error;
      }
    };
    const timer = setTimeout(() => {
      process.stdout.write(`Stopped: not finished after ${minutes} minutes.\n`);
      endAll("SIGKILL");
    }, minutes * 60_000);
    const stop = (signal) => {
      endAll(signal);
      process.exit(1);
    };
    for (const signal of ["SIGINT", "SIGTERM"]) process.once(signal, stop);
    let output = "";
    for (const stream of [child.stdout, child.stderr]) {
      stream.setEncoding("utf8").on("data", (text) => {
        output += text;
        process.stdout.write(text);
      });
    }
    child.on("error", reject);
    child.on("close", (code) => {
      clearTimeout(timer);
      for (const signal of ["SIGINT", "SIGTERM"]) process.off(signal, stop);
      resolve({ code: code ?? 1, output });
    });
  });
}
