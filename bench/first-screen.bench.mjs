// The script that a browser loads before the first screen stands, compressed. The peer is an empty page of the same framework.
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { gzipSync } from "node:zlib";
import { chromium } from "playwright-core";
import { build } from "vite";
import { startServer } from "./server-process.mjs";

const kilobytes = (script) => gzipSync(script, { level: 9 }).length / 1000;
const file = (path) => fileURLToPath(new URL(`../${path}`, import.meta.url));

async function emptyPage() {
  const entry = 'import { render } from "solid-js/web"; render(() => null, document.body);';
  const { output } = await build({
    root: file("."),
    configFile: false,
    logLevel: "error",
    build: { write: false, rolldownOptions: { input: "empty" } },
    plugins: [
      {
        name: "empty-page",
        resolveId: (id) => (id === "empty" ? file("bench/empty.mjs") : undefined),
        load: (id) => (id === file("bench/empty.mjs") ? entry : undefined),
      },
    ],
  });
  return output[0].code;
}

/** In the page from its first moment: when the Bench came to stand in it. */
function watchForBench() {
  new MutationObserver((_, watch) => {
    if (document.querySelector(".bench h1, .bench h2") === null) return;
    watch.disconnect();
    requestAnimationFrame(() => performance.mark("bench stands"));
  }).observe(document, { subtree: true, childList: true });
}

/** Scripts asked for until the Bench stands, and after it until nothing is asked for any more. */
async function scriptsLoaded(address) {
  const executablePath = process.env.CHROMIUM ?? "/usr/bin/chromium";
  const args = ["--no-sandbox", "--disable-gpu", "--disable-background-networking", "--disable-sync"];
  const browser = await chromium.launch({ executablePath, args });
  try {
    const page = await browser.newPage();
    await page.addInitScript(watchForBench);
    await page.goto(address, { waitUntil: "networkidle" });
    // The network may fall idle before the Bench stands: what was loaded by then is not what it takes.
    await page.waitForFunction(() => performance.getEntriesByName("bench stands").length > 0);
    const asked = await page.evaluate(() => {
      const stood = performance.getEntriesByName("bench stands")[0].startTime;
      return performance
        .getEntriesByType("resource")
        .filter(({ name }) => name.endsWith(".js"))
        .map(({ name, startTime }) => ({ path: new URL(name).pathname, before: startTime <= stood }));
    });
    const paths = (before) => [
      ...new Set(asked.filter((one) => one.before === before).map(({ path }) => path)),
    ];
    return { before: paths(true), after: paths(false) };
  } finally {
    await browser.close();
  }
}

export async function figures() {
  const data = mkdtempSync(join(tmpdir(), "lacbench-bench-"));
  const env = { LACBENCH_DATA: data, LACBENCH_NOTEBOOK: "demo" };
  const server = await startServer(process.execPath, ["scripts/start.mjs"], env);
  try {
    const { before, after } = await scriptsLoaded(server.address);
    if (before.length === 0) throw new Error("the first screen loaded no script");
    const size = (scripts) =>
      scripts.reduce((sum, path) => sum + kilobytes(readFileSync(file(`dist/web${path}`))), 0);
    return [
      {
        name: `script until the first screen stands, compressed, ${before.length} files`,
        value: size(before),
        unit: "kB",
        atMost: 200,
        peer: { name: "an empty page", value: kilobytes(await emptyPage()) },
      },
      { name: `script that it fetches next, ${after.length} files`, value: size(after), unit: "kB" },
    ];
  } finally {
    await server.stop();
    rmSync(data, { recursive: true });
  }
}
