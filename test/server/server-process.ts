import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { fileURLToPath } from "node:url";

const main = fileURLToPath(new URL("../../dist/server/main.js", import.meta.url));

export interface RunningServer {
  readonly address: string;
  /** All that it has printed. */
  readonly output: () => string;
  readonly pid: number;
  /** Ends it and returns the exit code, or null for one that was killed. */
  readonly end: (signal: NodeJS.Signals) => Promise<number | null>;
}

function start(env: Readonly<Record<string, string>>, options: { uid?: number; cwd?: string }): ChildProcess {
  return spawn(process.execPath, [main], {
    env: { PATH: process.env.PATH ?? "", PORT: "0", ...env },
    stdio: ["ignore", "pipe", "pipe"],
    ...options,
  });
}

const collect = (child: ChildProcess): (() => string) => {
  let text = "";
  for (const stream of [child.stdout, child.stderr])
    stream?.setEncoding("utf8").on("data", (part: string) => {
      text += part;
    });
  return () => text;
};

/** Starts the built server and waits until it says where it is. */
export async function startServer(
  env: Readonly<Record<string, string>>,
  cwd?: string,
): Promise<RunningServer> {
  const child = start(env, cwd === undefined ? {} : { cwd });
  const output = collect(child);
  const ended = once(child, "exit") as Promise<[number | null]>;
  const address = await new Promise<string>((resolve, reject) => {
    child.stdout?.on("data", () => {
      const found = /^Lacbench is at (http:\S+)\n$/m.exec(output());
      if (found !== null) resolve(found[1] as string);
    });
    ended.then(([code]) => reject(new Error(`The server ended with ${code}:\n${output()}`)));
  });
  const end = async (signal: NodeJS.Signals) => {
    child.kill(signal);
    return (await ended)[0];
  };
  return { address, output, pid: child.pid as number, end };
}

/** Starts the built server where it cannot run, and returns what it said and its exit code. */
export async function failToStart(
  env: Readonly<Record<string, string>>,
  options: { uid?: number } = {},
): Promise<{ code: number | null; said: string }> {
  const child = start(env, options);
  const said = collect(child);
  const [code] = (await once(child, "close")) as [number | null];
  return { code, said: said() };
}
