import { type ChildProcess, spawn } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type Browser, chromium, type Page } from "playwright-core";
import { chromiumPath, chromiumSwitches } from "./rig.ts";

/**
 * A browser with a profile on disk, as a phone has: it can be killed and started again with what it kept. A visit of
 * the rig has none; its storage goes with it.
 */
export class ChromiumPhone {
  readonly home = mkdtempSync(join(tmpdir(), "lacbench-phone-"));
  readonly #switches: readonly string[];
  #process: ChildProcess | undefined;
  #browser: Browser | undefined;

  constructor(switches: readonly string[] = []) {
    this.#switches = switches;
  }

  async start(): Promise<void> {
    const profile = join(this.home, "profile");
    rmSync(join(profile, "DevToolsActivePort"), { force: true });
    this.#process = spawn(
      chromiumPath,
      [
        ...chromiumSwitches,
        "--headless=new",
        "--remote-debugging-port=0",
        `--user-data-dir=${profile}`,
        ...this.#switches,
        "about:blank",
      ],
      { env: { ...process.env, HOME: this.home }, stdio: "ignore" },
    );
    const port = await portIn(join(profile, "DevToolsActivePort"));
    this.#browser = await chromium.connectOverCDP(`http://127.0.0.1:${port}`);
  }

  async newPage(): Promise<Page> {
    const [context] = this.#browser?.contexts() ?? [];
    if (context === undefined) throw new Error("The phone was not started.");
    return context.newPage();
  }

  /** As when the battery is taken out. */
  async kill(): Promise<void> {
    const child = this.#process;
    if (child === undefined) return;
    this.#process = undefined;
    const ended = new Promise((resolve) => child.once("exit", resolve));
    child.kill("SIGKILL");
    await ended;
    await this.#browser?.close().catch(() => undefined);
  }

  async leave(): Promise<void> {
    await this.kill();
    rmSync(this.home, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 });
  }
}

/** Chromium writes down where it listens once it does. */
async function portIn(file: string): Promise<string> {
  for (let tries = 0; tries < 300; tries++) {
    try {
      const [port] = readFileSync(file, "utf8").split("\n");
      if (port !== undefined && port !== "") return port;
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== "ENOENT") throw error;
    }
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  throw new Error("Chromium did not say where it listens.");
}
