// A phone out of reach: opening the Bench of a notebook of 10 000 entries from what the device keeps, and the answer to a tap, both
// with the processor slowed four times. The peer is the same page with the demo alone.
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { chromium } from "playwright-core";
import { demoEntries } from "../dist/core/demo/demo.js";
import { writeEntry } from "../dist/core/notebook/write-entry.js";
import { randomFromSeed, randomIndex } from "../dist/core/random.js";
import { medianOf } from "./median.mjs";
import { startServer } from "./server-process.mjs";

const slower = 4;
const rounds = 5;

/** The demo, so that the Bench has something due, and notes about its things up to so many entries. */
function notebookOf(count) {
  const now = new Date().toISOString();
  const texts = demoEntries({ seed: "1", now, zone: "Europe/Berlin" });
  const { notebook } = texts[0].entry;
  const random = randomFromSeed("offline bench");
  let seq = 0;
  const effects = {
    now: () => now,
    randomBytes: (length) => Uint8Array.from({ length }, () => randomIndex(random, 256)),
    zone: "Europe/Berlin",
    device: "01a00000-0000-7000-8000-00000000000b",
    nextSeq: () => ++seq,
    by: null,
  };
  const all = [...texts];
  while (all.length < count) {
    const about = [texts[randomIndex(random, texts.length)].entry.id];
    all.push(writeEntry({ notebook, kind: "note", about, body: { text: `note ${all.length}` } }, effects));
  }
  return { notebook, texts: all.map((kept) => kept.text) };
}

async function send(address, { notebook, texts }) {
  for (let at = 0; at < texts.length; at += 1_000) {
    const body = `[${texts.slice(at, at + 1_000).join(",")}]`;
    const answer = await fetch(`${address}/api/notebooks/${notebook}/entries`, { method: "POST", body });
    if (!answer.ok) throw new Error(`the server answered ${answer.status}`);
  }
}

/** From going there until the Bench can be pressed. */
async function opening(page, address) {
  const began = performance.now();
  await page.goto(`${address}/bench`);
  await page.locator("h1").first().waitFor();
  await page.locator(".bench").waitFor();
  return performance.now() - began;
}

/** From a press until the frame that answers it: a tile that is left out and taken in again. */
const tapping = (page) =>
  page.evaluate(
    () =>
      new Promise((resolve, reject) => {
        const tile = document.querySelector(".tiles button");
        if (tile === null) reject(new Error("nothing is due at this Bench"));
        const before = tile.getAttribute("aria-pressed");
        const began = performance.now();
        tile.click();
        const look = () =>
          tile.isConnected && tile.getAttribute("aria-pressed") === before
            ? requestAnimationFrame(look)
            : requestAnimationFrame(() => resolve(performance.now() - began));
        look();
      }),
  );

async function measured(browser, count) {
  const data = mkdtempSync(join(tmpdir(), "lacbench-bench-"));
  const server = await startServer(process.execPath, ["scripts/start.mjs"], { LACBENCH_DATA: data });
  const context = await browser.newContext({ viewport: { width: 390, height: 844 }, hasTouch: true });
  try {
    await send(server.address, notebookOf(count));
    const page = await context.newPage();
    await page.goto(`${server.address}/bench`);
    await page.getByText("All in the notebook").waitFor({ timeout: 60_000 });
    await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
    await context.setOffline(true);
    const cdp = await context.newCDPSession(page);
    await cdp.send("Emulation.setCPUThrottlingRate", { rate: slower });
    const open = await medianOf(rounds, () => opening(page, server.address));
    const tap = await medianOf(rounds, () => tapping(page));
    return { open, tap };
  } finally {
    await context.close();
    await server.stop();
    rmSync(data, { recursive: true });
  }
}

export async function figures() {
  const executablePath = process.env.CHROMIUM ?? "/usr/bin/chromium";
  const args = ["--no-sandbox", "--disable-gpu", "--disable-background-networking", "--disable-sync"];
  const browser = await chromium.launch({ executablePath, args });
  try {
    const few = await measured(browser, 100);
    const many = await measured(browser, 10_000);
    const peer = (value) => ({ name: "the demo alone", value });
    return [
      {
        name: "the Bench opens out of reach, 10 000 entries",
        value: many.open,
        unit: "ms",
        atMost: 1_500,
        peer: peer(few.open),
      },
      {
        name: "a tap is answered, 10 000 entries",
        value: many.tap,
        unit: "ms",
        atMost: 100,
        peer: peer(few.tap),
      },
    ];
  } finally {
    await browser.close();
  }
}
