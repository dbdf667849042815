import { spawn } from "node:child_process";
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

const root = fileURLToPath(new URL("..", import.meta.url));

/** Starts a server that prints its address, and waits for its first answer. */
export async function startServer(command, args, env) {
  const begun = performance.now();
  const child = spawn(command, args, {
    cwd: root,
    env: { ...process.env, PORT: "0", LACBENCH_OPEN: "0", ...env },
    stdio: ["ignore", "pipe", "inherit"],
    detached: true,
  });
  const stopped = new Promise((resolve) => child.once("exit", resolve));
  const address = await new Promise((resolve, reject) => {
    let output = "";
    child.stdout.setEncoding("utf8").on("data", (text) => {
      output += text;
      const found = / is at (http:\S+)/.exec(output);
      if (found !== null) resolve(found[1]);
    });
    stopped.then((code) => reject(new Error(`${command} ended with ${code}:\n${output}`)));
  });
  const answer = await fetch(address);
  await answer.arrayBuffer();
  if (!answer.ok) throw new Error(`${address} answered ${answer.status}`);
  return {
    address,
    firstAnswerS: (performance.now() - begun) / 1000,
    pid: child.pid,
    stop: () => {
      process.kill(-child.pid, "SIGTERM");
      return stopped;
    },
  };
}

/** Memory that a process holds, in megabytes, as Linux counts it. */
export const residentMb = (pid) =>
  Number(/^VmRSS:\s+(\d+) kB/m.exec(readFileSync(`/proc/${pid}/status`, "utf8"))[1]) / 1024;
