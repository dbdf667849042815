import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { createInterface } from "node:readline";
import { text } from "node:stream/consumers";
import { fileURLToPath } from "node:url";

/** One of the ways to a calculation: gives its output, and throws what it says when it refuses. */
export type Door = (calculation: string, input: unknown) => Promise<unknown>;

const built = (path: string): string => fileURLToPath(new URL(`../../../dist/${path}`, import.meta.url));

/** The package as an outsider imports it. */
export const functionDoor: Door = async (name, input) => {
  const { calculate, calculationNamed } = await import("lacbench/core");
  const calculation = calculationNamed(name);
  if (calculation === undefined) throw new Error(`${name} is not exported`);
  const result = calculate(calculation, input);
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
};

/** A process of its own, as a shell would start it. */
export const commandDoor: Door = async (name, input) => {
  const child = spawn(process.execPath, [built("cli/bin.js"), "calc", name], { stdio: "pipe" });
  child.stdin.end(JSON.stringify(input));
  const [out, err, [code]] = await Promise.all([
    text(child.stdout),
    text(child.stderr),
    once(child, "close"),
  ]);
  if (code !== 0) throw new Error(`exit ${code}: ${err.trim()}`);
  return JSON.parse(out);
};

const patienceMs = 30_000;

/** A real server on a free port, started when it is first asked, with a data folder that goes with it. */
export class ServerDoor {
  #running:
    | Promise<{ readonly address: string; readonly child: ChildProcess; readonly data: string }>
    | undefined;

  readonly run: Door = async (name, input) => {
    this.#running ??= startServer();
    const { address } = await this.#running;
    const response = await fetch(`${address}/api/calc/${name}`, {
      method: "POST",
      headers: { "content-type": "application/json" },
      body: JSON.stringify(input),
    });
    const body = await response.text();
    if (!response.ok) throw new Error(`HTTP ${response.status}: ${body}`);
    return JSON.parse(body);
  };

  async close(): Promise<void> {
    const running = await this.#running?.catch(() => undefined);
    this.#running = undefined;
    if (running === undefined) return;
    const closed = once(running.child, "close");
    running.child.kill("SIGTERM");
    await closed;
    rmSync(running.data, { recursive: true, force: true });
  }
}

async function startServer() {
  const data = mkdtempSync(join(tmpdir(), "lacbench-checks-"));
  const env = {
    ...process.env,
    PORT: "0",
    HOST: "127.0.0.1",
    LACBENCH_DATA: data,
    LACBENCH_NOTEBOOK: "empty",
    LACBENCH_OPEN: "0",
  };
  const child = spawn(process.execPath, [built("server/main.js")], {
    env,
    stdio: ["ignore", "pipe", "pipe"],
  });
  const said: string[] = [];
  child.stderr.on("data", (chunk) => said.push(String(chunk)));
  const late = setTimeout(() => child.kill("SIGKILL"), patienceMs);
  for await (const line of createInterface({ input: child.stdout })) {
    said.push(`${line}\n`);
    const [, address] = /^Lacbench is at (http\S+)$/.exec(line) ?? [];
    if (address === undefined) continue;
    clearTimeout(late);
    child.stdout.resume();
    return { address, child, data };
  }
  clearTimeout(late);
  rmSync(data, { recursive: true, force: true });
  throw new Error(`the server did not start: ${said.join("").trim()}`);
}

export const keptReferencePage = (): string =>
  readFileSync(fileURLToPath(new URL("../../../docs/calculations.md", import.meta.url)), "utf8");
