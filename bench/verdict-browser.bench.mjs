// The verdict page of a trial of 200 patches and five things looked at, in the built pages: every long task of the page while
// it goes from one to the next, and the time until each is in sight.
import { randomBytes } from "node:crypto";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { chromium } from "playwright-core";
import { newEntryId } from "../dist/core/notebook/entry-id.js";
import { trialKeyText } from "../dist/core/notebook/trial-key.js";
import { sha256OfText } from "../dist/core/notebook/withdrawal.js";
import { writeEntry } from "../dist/core/notebook/write-entry.js";
import { randomFromSeed, randomNormal } from "../dist/core/random.js";
import { startServer } from "./server-process.mjs";

const bytes = (length) => new Uint8Array(randomBytes(length));
const steps = ["none", "slight", "plain", "strong"];
const looks = [
  { name: "gloss", scale: "measured", unit: "gloss units", matters: 5 },
  { name: "haze", scale: "measured", unit: "haze units", matters: 5 },
  { name: "colour", scale: "measured", unit: "ΔE00", matters: 2 },
  { name: "grain raise", scale: "ordered", levels: steps, matters: 0.3 },
  { name: "smoothness", scale: "ordered", levels: steps, matters: 0.3 },
];

/** Ten boards of twenty patches: four alcohols, five jars of each. */
function patches() {
  return Array.from({ length: 200 }, (_, i) => {
    const [board, place] = [Math.floor(i / 20), i % 20];
    const alcohol = `alcohol ${place % 4}`;
    const jar = `${alcohol} · jar ${Math.floor(place / 4) + 1}`;
    return {
      patch: `b${board}-${place}`,
      board: `b${board}`,
      place: place + 1,
      code: `C${i}`,
      treatment: { alcohol },
      jar,
    };
  });
}

function notebook() {
  const now = new Date().toISOString();
  const id = newEntryId(now, 1, bytes);
  const device = newEntryId(now, 2, bytes);
  const texts = [];
  const write = (kind, body, about = []) => {
    const effects = {
      now: () => now,
      randomBytes: bytes,
      zone: "Europe/Berlin",
      device,
      nextSeq: () => texts.length + 1,
      by: null,
    };
    const kept = writeEntry({ notebook: id, kind, body, about }, effects);
    texts.push(kept.text);
    return kept.entry.id;
  };
  write("notebook-begun", { name: "Two hundred patches" });
  const laid = patches();
  const keyText = trialKeyText(
    laid.map((p) => ({ ...p, order: [] })),
    "a".repeat(32),
    "b".repeat(32),
  );
  const varies = [
    { factor: "alcohol", levels: [...new Set(laid.map((p) => p.treatment.alcohol))], appliedTo: "jar" },
  ];
  const trial = write("trial-asked", { question: "Which of four?", varies, looksAt: looks, coats: 1 });
  const boards = [...new Set(laid.map((p) => p.board))].map((name) => ({
    name,
    plank: name,
    wood: "cherry",
    patches: 20,
  }));
  const jars = [...new Map(laid.map((p) => [p.jar, p.treatment]))].map(([jar, recipe]) => ({ jar, recipe }));
  write(
    "trial-laid-out",
    {
      boards,
      patches: laid.map(({ patch, board, place, code }) => ({ patch, board, place, code })),
      orders: [],
      keySha256: sha256OfText(keyText),
      blinding: "none",
      jars,
    },
    [trial],
  );
  write("key-opened", { key: keyText }, [trial]);
  const random = randomFromSeed("verdict page");
  for (const look of looks)
    for (const { patch } of laid) {
      const value = 40 + 3 * randomNormal(random);
      const read = { patch, response: look.name, afterCoat: 1, who: "Ada" };
      if (look.scale === "measured")
        write("measured", { ...read, value: { typed: String(value), unit: look.unit, si: value } }, [trial]);
      else
        write("judged", { ...read, level: steps[Math.max(0, Math.min(3, Math.round((value - 35) / 3)))] }, [
          trial,
        ]);
    }
  return { id, trial, texts };
}

/** In the page: presses each thing looked at in turn, and waits until another sentence stands there. */
async function through(names) {
  const long = [];
  new PerformanceObserver((list) => long.push(...list.getEntries())).observe({ type: "longtask" });
  const head = () => document.querySelector(".comparisons")?.textContent ?? "";
  const times = [];
  for (const name of [...names, ...names].slice(1)) {
    const before = head();
    const start = performance.now();
    [...document.querySelectorAll("input[type=radio]")]
      .find((one) => one.value === name || one.closest("label")?.textContent.trim() === name)
      .click();
    await new Promise((seen) => {
      const look = () => (head() === before ? requestAnimationFrame(look) : seen());
      look();
    });
    times.push(performance.now() - start);
    await new Promise((drawn) => setTimeout(drawn, 150));
  }
  return { times, longest: Math.max(0, ...long.map((task) => task.duration)) };
}

async function measured(address, trial) {
  const browser = await chromium.launch({
    executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
    args: ["--no-sandbox", "--disable-gpu", "--disable-background-networking", "--disable-sync"],
  });
  try {
    const page = await browser.newPage();
    await page.goto(`${address}/trials/${trial}/verdict`);
    await page.locator(".comparisons h2, .comparisons h3").first().waitFor();
    await page.waitForTimeout(2000); // all that follows the first sentence is done too
    return await page.evaluate(
      through,
      looks.map(({ name }) => name),
    );
  } finally {
    await browser.close();
  }
}

export async function figures() {
  const data = mkdtempSync(join(tmpdir(), "lacbench-bench-"));
  const server = await startServer(process.execPath, ["dist/server/main.js"], { LACBENCH_DATA: data });
  try {
    const { id, trial, texts } = notebook();
    const answer = await fetch(`${server.address}/api/notebooks/${id}/entries`, {
      method: "POST",
      headers: { "content-type": "application/json" },
      body: `[${texts.join(",")}]`,
    });
    if (!answer.ok) throw new Error(`the server answered ${answer.status}`);
    const { times, longest } = await measured(server.address, trial);
    return [
      {
        name: "the verdict on one of five looks at 200 patches in sight, the slowest of nine",
        value: Math.max(...times),
        unit: "ms",
      },
      { name: "the longest task of the page meanwhile", value: longest, unit: "ms", atMost: 50 },
    ];
  } finally {
    await server.stop();
    rmSync(data, { recursive: true });
  }
}
