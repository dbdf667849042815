import { type ChildProcess, spawn } from "node:child_process";
import { mkdirSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type Browser, type BrowserContext, chromium, type Page } from "playwright-core";

const root = join(import.meta.dirname, "../..");
const axeSource = readFileSync(join(root, "node_modules/axe-core/axe.min.js"), "utf8");

export const sizes = {
  phone: { width: 390, height: 844 },
  desktop: { width: 1280, height: 800 },
} as const;
export type Size = keyof typeof sizes;
export const lights = ["day", "dark", "dim"] as const;
export type Light = (typeof lights)[number];

/** A real server on a folder of its own. `kill` ends it as a power cut would; `start` opens the same folder again. */
export class House {
  readonly folder = mkdtempSync(join(tmpdir(), "lacbench-web-"));
  #process: ChildProcess | undefined;
  #port = 0;
  address = "";

  async start(): Promise<void> {
    const child = spawn(process.execPath, [join(root, "dist/server/main.js")], {
      env: { ...process.env, PORT: String(this.#port), LACBENCH_DATA: this.folder, LACBENCH_OPEN: "0" },
      stdio: ["ignore", "pipe", "pipe"],
    });
    this.#process = child;
    this.address = await addressSaid(child);
    this.#port = Number(new URL(this.address).port); // the browser keeps its book by the address: come back to it
  }

  kill(): Promise<void> {
    return this.#end("SIGKILL");
  }

  stop(): Promise<void> {
    return this.#end("SIGTERM");
  }

  async leave(): Promise<void> {
    await this.stop();
    rmSync(this.folder, { recursive: true, force: true });
  }

  async #end(signal: "SIGTERM" | "SIGKILL"): Promise<void> {
    const child = this.#process;
    this.#process = undefined;
    if (child === undefined || child.exitCode !== null) return;
    const ended = new Promise((resolve) => child.once("exit", resolve));
    child.kill(signal);
    await ended;
  }
}

function addressSaid(child: ChildProcess): Promise<string> {
  return new Promise((resolve, reject) => {
    let said = "";
    const hear = (chunk: Buffer) => {
      said += chunk.toString();
      const found = /Lacbench is at (http:\/\/\S+)/.exec(said);
      if (found?.[1] !== undefined) resolve(found[1]);
    };
    child.stdout?.on("data", hear);
    child.stderr?.on("data", hear);
    child.once("exit", (code) =>
      reject(new Error(`The server ended with ${code} before it was up:\n${said}`)),
    );
  });
}

export const chromiumPath = process.env.CHROMIUM ?? "/usr/bin/chromium";
export const chromiumSwitches: readonly string[] = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];

export const openBrowser = (switches: readonly string[] = []): Promise<Browser> =>
  chromium.launch({ executablePath: chromiumPath, args: [...chromiumSwitches, ...switches] });

export interface Visit {
  readonly context: BrowserContext;
  readonly page: Page;
  /** Errors that the page threw or wrote down; a test ends by seeing that there are none. */
  readonly faults: readonly string[];
  /** Requests to anywhere but the house. */
  readonly strayed: readonly string[];
}

/** A browser of its own: nothing kept from another visit. */
export async function visit(browser: Browser, address: string, size: Size): Promise<Visit> {
  const context = await browser.newContext({
    viewport: sizes[size],
    deviceScaleFactor: size === "phone" ? 2 : 1,
    hasTouch: size === "phone",
    timezoneId: "Europe/Berlin",
    locale: "en-GB",
    baseURL: address,
  });
  const page = await context.newPage();
  takeABreath(page);
  const faults: string[] = [];
  const strayed: string[] = [];
  page.on("pageerror", (error) => faults.push(String(error)));
  page.on("console", (message) => {
    // A request that gets no answer is written down by the browser itself; being out of reach is no fault.
    if (message.type() === "error" && !/Failed to load resource/.test(message.text()))
      faults.push(message.text());
  });
  page.on("request", (request) => {
    if (!request.url().startsWith(address) && !/^(data|blob):/.test(request.url()))
      strayed.push(request.url());
  });
  return { context, page, faults, strayed };
}

/** As long as a person takes at the least from a press to leaving the page; by then it is kept, and mostly sent. */
const breathMs = 1_500;

/** Before it leaves a page or loads it anew, a test waits for what it just wrote, as long as a house that answers takes. */
function takeABreath(page: Page): void {
  const sent = () =>
    page
      .locator(".news", { hasText: /to send|not in your file|Being kept/ })
      .waitFor({ state: "detached", timeout: breathMs })
      .catch(() => undefined); // out of reach it stays, kept
  const [goto, reload] = [page.goto.bind(page), page.reload.bind(page)];
  page.goto = async (...to) => {
    await sent();
    return goto(...to);
  };
  page.reload = async (...how) => {
    await sent();
    return reload(...how);
  };
}

export async function setLight(page: Page, light: Light): Promise<void> {
  await page.evaluate((to) => {
    document.documentElement.dataset.light = to;
  }, light);
}

/** What axe-core finds against WCAG 2.2 A and AA, one line each. */
export async function accessibilityFaults(page: Page): Promise<readonly string[]> {
  return axeFaults(page, ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"], {
    "color-contrast": { enabled: isWide(page) }, // the slowest of all; a phone has the same colours
  });
}

const isWide = (page: Page): boolean => (page.viewportSize()?.width ?? 0) >= sizes.desktop.width;

/** What axe finds by these tags or rules. */
async function axeFaults(
  page: Page,
  runOnly: string[],
  rules: Record<string, { readonly enabled: boolean }> = {},
): Promise<readonly string[]> {
  if (!(await page.evaluate(() => "axe" in window))) await page.evaluate(axeSource);
  return page.evaluate(
    async (options) => {
      const { axe } = window as unknown as { axe: typeof import("axe-core") };
      const found = await axe.run(document, options);
      return found.violations.flatMap((v) =>
        v.nodes.map((n) => `${v.id}: ${n.html.slice(0, 160)} (${n.failureSummary})`),
      );
    },
    { runOnly, rules },
  );
}

/** What can be pressed and is smaller than 48 px either way, among what is in sight. Links inside a sentence are exempt. */
export async function smallTargets(page: Page): Promise<readonly string[]> {
  return page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>("button, input, select, textarea, summary, nav a, a.press")]
      .filter((one) => one.checkVisibility({ visibilityProperty: true }))
      .map((one) => ({ one, target: one.closest("label") ?? one }))
      .map(({ one, target }) => ({ one, box: target.getBoundingClientRect() }))
      .filter(({ box }) => box.width > 0 && (box.height < 47.5 || box.width < 47.5))
      .map(
        ({ one, box }) =>
          `${one.outerHTML.slice(0, 120)} is ${Math.round(box.width)} × ${Math.round(box.height)}`,
      ),
  );
}

/** Nothing may be wider than the screen. */
export async function sidewaysScroll(page: Page): Promise<number> {
  return page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
}

export async function picture(page: Page, name: string, fullPage = true): Promise<void> {
  const folder = join(root, "test-artefacts");
  mkdirSync(folder, { recursive: true });
  await page.screenshot({ path: join(folder, `${name}.png`), fullPage, animations: "disabled" });
}

/** A picture in each light, for those who look at them (`PICTURES=1`); returns what is too faint in the lights that the page is not looked at in otherwise. */
export async function pictures(page: Page, name: string): Promise<readonly string[]> {
  const faint: string[] = [];
  const before = await page.evaluate(() => document.documentElement.dataset.light as Light);
  const wide = isWide(page);
  for (const light of wide || process.env.PICTURES !== undefined ? lights : []) {
    await setLight(page, light);
    if (process.env.PICTURES !== undefined) await picture(page, `${name}-${light}`);
    if (light !== before && wide)
      faint.push(...(await axeFaults(page, ["color-contrast"])).map((f) => `${light}: ${f}`));
  }
  await setLight(page, before);
  return faint;
}
