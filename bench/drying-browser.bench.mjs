// The same film in Chromium with its processor held to a quarter, and the margins of twelve jars in a worker while the page
// draws.
import { fileURLToPath } from "node:url";
import { chromium } from "playwright-core";
import { build } from "vite";

const root = fileURLToPath(new URL("..", import.meta.url));

const script = `
import { blushOfSetup } from "${root}dist/core/evaporation/blush.js";
import { dryFilm } from "${root}dist/core/evaporation/drying.js";
import { six, twelve } from "${root}bench/drying-setups.mjs";
const median = (values) => values.sort((a, b) => a - b)[values.length >> 1];
const timed = (times, work) => median(Array.from({ length: times }, () => {
  const start = performance.now();
  work();
  return performance.now() - start;
}));
const margins = () => twelve.map((jar) => blushOfSetup(jar).margin);
globalThis.drying = { film: () => timed(20, () => dryFilm(six)), margins: () => timed(10, margins) };
globalThis.onmessage = ({ data }) => postMessage({ asked: data, margins: margins() });
`;

async function bundled() {
  const { output } = await build({
    root,
    configFile: false,
    logLevel: "error",
    build: { write: false, rolldownOptions: { input: "drying-bench", output: { format: "iife" } } },
    plugins: [
      {
        name: "drying-bench",
        resolveId: (id) => (id === "drying-bench" ? "\0drying-bench" : undefined),
        load: (id) => (id === "\0drying-bench" ? script : undefined),
      },
    ],
  });
  return output[0].code;
}

/** In the page: asks a worker for the margins again and again, and notes how long each takes and every long task meanwhile. */
async function marginsInWorker(code) {
  const worker = new Worker(URL.createObjectURL(new Blob([code], { type: "text/javascript" })));
  const ask = () =>
    new Promise((known) => {
      const start = performance.now();
      worker.onmessage = () => known(performance.now() - start);
      worker.postMessage("margins");
    });
  for (let i = 0; i < 5; i++) await ask();
  const long = [];
  new PerformanceObserver((list) => long.push(...list.getEntries())).observe({ type: "longtask" });
  const times = [];
  for (let i = 0; i < 20; i++) times.push(await ask());
  await new Promise((drawn) => setTimeout(drawn, 200));
  worker.terminate();
  return { median: times.sort((a, b) => a - b)[10], longTasks: long.length };
}

export async function figures() {
  const code = await bundled();
  const browser = await chromium.launch({
    executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
    args: ["--no-sandbox", "--disable-gpu", "--disable-background-networking", "--disable-sync"],
  });
  try {
    const page = await browser.newPage();
    await page.addScriptTag({ content: code });
    await page.evaluate(() => globalThis.drying.film());
    const inWorker = await page.evaluate(marginsInWorker, code);
    const session = await page.context().newCDPSession(page);
    await session.send("Emulation.setCPUThrottlingRate", { rate: 4 });
    const film = await page.evaluate(() => globalThis.drying.film());
    const margins = await page.evaluate(() => globalThis.drying.margins());
    const ms = { unit: "ms", atMost: 100 };
    return [
      {
        name: "six components, 12 hours, in Chromium at a quarter of its speed, median of 20",
        value: film,
        ...ms,
      },
      { name: "the margin of twelve jars in a worker, median of 20", value: inWorker.median, ...ms },
      {
        name: "tasks of over 50 ms in the page meanwhile",
        value: inWorker.longTasks,
        unit: "tasks",
        atMost: 0,
      },
      {
        name: "the margin of twelve jars at a quarter of its speed, median of 10",
        value: margins,
        unit: "ms",
      },
    ];
  } finally {
    await browser.close();
  }
}
