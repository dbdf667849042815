import { describe, expect, test } from "vitest";
import { Notebook } from "../notebook/notebook.ts";
import { parseEntry } from "../notebook/parse-entry.ts";
import { calculate } from "../registry/calculation.ts";
import { verdictCalculation } from "../registry/verdict.ts";
import { poundsPerUsGallonFromCut } from "../units.ts";
import { coatsOfTrial } from "../views/bench.ts";
import { jarFitness, jarIds, jarView } from "../views/jar.ts";
import { trialIds, trialView } from "../views/trial.ts";
import { blindingHad, trialRows } from "../views/trial-rows.ts";
import { demoEntries } from "./demo.ts";
import { type DemoTruth, demoAlcohols, demoTruth, glossThatMatters } from "./truth.ts";

const now = "2026-11-02T09:30:00.000Z";
const zone = "Europe/Berlin";
const seeds = ["1", "2", "3", "4", "5", "library", "2741", "2027"];

function book(seed: string, truth?: DemoTruth): Notebook {
  const entries = demoEntries({ seed, now, zone, ...(truth === undefined ? {} : { truth }) });
  const notebook = new Notebook(entries[0]?.entry.notebook ?? "");
  notebook.add(entries);
  return notebook;
}

const chairsTrial = (notebook: Notebook): string =>
  trialIds(notebook).find((id) => trialView(notebook, id)?.asked.question.includes("chairs")) ?? "";

interface Said {
  readonly about: string;
  readonly pairs: { a: string; b: string; difference: number; verdict: string; directionSure: boolean }[];
}

function gloss(notebook: Notebook, compare: string): Said {
  const trial = trialView(notebook, chairsTrial(notebook));
  if (trial === null) throw new Error("no trial");
  const rows = trialRows(trial, "gloss", compare, 4, "as laid out");
  const said = calculate(verdictCalculation, {
    response: { name: "gloss", scale: "measured", matters: glossThatMatters },
    compare,
    appliedTo: { alcohol: "jar", cut: "jar", wood: "plank" },
    rows,
  });
  if (!said.ok) throw new Error(said.error.message);
  return said.value as Said;
}
const wordOf = (said: Said, a: string, b: string) =>
  said.pairs.find((p) => (p.a === a && p.b === b) || (p.a === b && p.b === a))?.verdict;

describe.each(seeds)("seed %s", (seed) => {
  const notebook = book(seed);

  test("every entry reads back byte for byte, and the fold has nothing to report", () => {
    for (const { text, entry } of demoEntries({ seed, now, zone })) {
      const read = parseEntry(text);
      expect(read.ok && read.value.text).toBe(text);
      expect(entry.happened <= now).toBe(true);
    }
    const odd = notebook.reports.filter((report) => !("code" in report && report.code === "unknown-fields"));
    expect(odd).toEqual([]);
  });

  test("every jar can be reckoned, and no entry of any is unusable", () => {
    const jars = jarIds(notebook).map((id) => jarView(notebook, id));
    expect(jars).toHaveLength(1 + 6 + 6 + 12 + 1 + 4);
    expect(jars.flatMap((jar) => jar?.unusable ?? [])).toEqual([]);
    expect(jars.every((jar) => jar?.known)).toBe(true);
    for (const jar of jars.filter((j) => j?.stage === "thinned")) {
      const cut = jar?.cut ? poundsPerUsGallonFromCut(jar.cut.value) : 0;
      const label = jar?.labelCut ? poundsPerUsGallonFromCut(jar.labelCut) : 0;
      expect(Math.abs(cut - label)).toBeLessThan(0.12);
    }
  });

  test("one jar has gone bad, and one has lost solvent", () => {
    const jars = jarIds(notebook);
    const bad = jars.filter((id) => jarFitness(notebook, id, now).state === "discard");
    expect(bad.map((id) => jarView(notebook, id)?.code)).toEqual(["G1"]);
    const lost = jars.filter((id) => jarView(notebook, id)?.lost != null);
    expect(lost.map((id) => jarView(notebook, id)?.code)).toEqual(["L3"]);
  });

  test("one mistake is struck out, and stays readable", () => {
    const struck = notebook.ordered().filter((entry) => !notebook.isLive(entry.id));
    expect(struck.map((entry) => entry.kind)).toEqual(["batch-mixed"]);
  });

  test("the verdicts have the words that the truth has", () => {
    const alcohol = gloss(notebook, "alcohol");
    expect(alcohol.about).toBe("alcohol");
    expect(wordOf(alcohol, "ethanol", "denatured")).toBe("equal");
    expect(wordOf(alcohol, "ethanol", "isopropanol")).toBe("unclear");
    expect(wordOf(gloss(notebook, "cut"), "1 lb", "1½ lb")).toBe("different");
  });

  test("with the labels permuted, the verdicts move with them", () => {
    const [e, i, d] = demoAlcohols;
    const permuted: DemoTruth = {
      gloss: {
        [e]: demoTruth.gloss[i],
        [i]: demoTruth.gloss[d],
        [d]: demoTruth.gloss[e],
      } as DemoTruth["gloss"],
      glossOfStrongerCut: -demoTruth.glossOfStrongerCut,
    };
    const moved = book(seed, permuted);
    const alcohol = gloss(moved, "alcohol");
    expect(wordOf(alcohol, i, d)).toBe("equal");
    expect(wordOf(alcohol, e, d)).toBe("unclear");
    const cut = gloss(moved, "cut");
    const pair = cut.pairs[0];
    expect(pair?.verdict).toBe("different");
    expect(Math.sign((pair?.difference ?? 0) * (pair?.a === "1 lb" ? 1 : -1))).toBe(1);
  });
});

test("a helper held the key until all was judged", () => {
  const notebook = book("1");
  const trial = trialView(notebook, chairsTrial(notebook));
  expect(trial?.key.state).toBe("open");
  expect(trial === null ? null : blindingHad(trial)).toMatchObject({
    had: "helper held the key",
    knowing: 0,
  });
});

test("coats of the running trial are due in the morning, from all four jars", () => {
  const notebook = book("1");
  const running = trialIds(notebook).find((id) => id !== chairsTrial(notebook)) ?? "";
  const coats = coatsOfTrial(notebook, running, null);
  expect(coats.flatMap((coat) => coat.patches)).toHaveLength(8);
  expect(coats.map((coat) => coat.coat)).toEqual([3, 3, 3, 3]);
  expect(coats.every((coat) => coat.dueMs !== null && coat.dueMs < Date.parse(now))).toBe(true);
  expect(new Set(coats.map((coat) => coat.jar?.batch)).size).toBe(4);
});

test("the same options give the same bytes, another seed another month", () => {
  const texts = (seed: string) => demoEntries({ seed, now, zone }).map((kept) => kept.text);
  expect(texts("1")).toEqual(texts("1"));
  expect(texts("1")).not.toEqual(texts("2"));
});

test("its evenings are evenings in the zone that was asked for", () => {
  const at = (zone: string) =>
    demoEntries({ seed: "1", now, zone }).find((kept) => kept.entry.kind === "sitting-begun")?.entry.happened;
  expect(at("Europe/Berlin")).toMatch(/T16:00:00/); // CEST, UTC+2, before the clocks change on 25 October
  expect(at("America/New_York")).toMatch(/T22:00:00/); // EDT, UTC−4
});
