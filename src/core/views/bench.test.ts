import { expect, test } from "vitest";
import { Pen } from "../demo/pen.ts";
import type { Body, Kind } from "../notebook/kinds/all.ts";
import { type TrialKey, trialKeyText } from "../notebook/trial-key.ts";
import { sha256OfText } from "../notebook/withdrawal.ts";
import { celsius, kelvinFromCelsius } from "../units.ts";
import { airView } from "./air.ts";
import {
  coatsOfTrial,
  coatsOnBoard,
  type DueCoat,
  openSitting,
  soonestFirst,
  trialsAtBench,
} from "./bench.ts";
import { pieceCoats } from "./bench-pieces.ts";
import { doubledCoats } from "./doubled-coats.ts";
import { jarsToLookAt } from "./look-again.ts";

const atMs = (time: string) => Date.parse(`2026-10-14T${time}:00Z`);

function desk() {
  const pen = new Pen("bench tests", "Europe/Berlin");
  const write = <K extends Kind>(
    time: string,
    kind: K,
    body: Body<K>,
    about: readonly string[] = [],
    strikes: readonly string[] = [],
  ) => pen.write(`2026-10-14T${time}:00.000Z`, kind, body, { about, strikes });
  return { notebook: pen.book, write, pen };
}

const codes = ["K7", "R4", "T2", "N3"] as const;
const jars = ["ethanol · jar 1", "isopropanol · jar 1"] as const;
const keyText = trialKeyText(
  codes.map((code, i) => ({
    patch: `p${i + 1}`,
    board: i < 2 ? "b1" : "b2",
    place: (i % 2) + 1,
    code,
    treatment: { alcohol: i % 2 === 0 ? "ethanol" : "isopropanol" },
    jar: jars[i % 2] as string,
    order: [i + 1],
  })) as never,
  "f".repeat(32),
  "0".repeat(32),
);
const key = JSON.parse(keyText) as TrialKey;

function withTrial() {
  const { notebook, write, pen } = desk();
  const trial = write("08:00", "trial-asked", {
    question: "Which alcohol?",
    varies: [{ factor: "alcohol", levels: ["ethanol", "isopropanol"], appliedTo: "jar" }],
    looksAt: [{ name: "gloss", scale: "measured" }],
    coats: 2,
  });
  write(
    "09:00",
    "trial-laid-out",
    {
      boards: [
        { name: "b1", plank: "P", wood: "cherry", patches: 2 },
        { name: "b2", plank: "Q", wood: "ash", patches: 2 },
      ],
      patches: codes.map((code, i) => ({
        patch: `p${i + 1}`,
        board: i < 2 ? "b1" : "b2",
        place: (i % 2) + 1,
        code,
      })),
      orders: [
        ["T2", "R4", "N3", "K7"],
        ["N3", "K7", "R4", "T2"],
      ],
      keySha256: sha256OfText(keyText),
      blinding: "codes only",
      jars: jars.map((jar, i) => ({ jar, recipe: { alcohol: i === 0 ? "ethanol" : "isopropanol" } })),
    },
    [trial],
  );
  const coat = (time: string, patches: readonly string[], n: number, method: "pad" | "brush" = "pad") =>
    write(
      time,
      "layer-applied",
      {
        sort: "coat",
        targets: patches.map((patch) => ({ trial, patch })),
        from: [],
        method,
        planned: { coat: n },
      },
      [trial],
    );
  const due = (held: TrialKey | null = null) => coatsOfTrial(notebook, trial, held);
  return { notebook, write, trial, coat, due, pen };
}
const codesOf = (coat: DueCoat) => coat.patches.map((p) => p.code).join(" ");
const said = (coats: readonly DueCoat[]) => coats.map((c) => [c.coat, c.jar?.name ?? null, codesOf(c)]);

test("a wait after a remembered coat is counted from the latest that it may have gone on, and is marked so", () => {
  const { due, trial, pen } = withTrial();
  const body: Body<"layer-applied"> = {
    sort: "coat",
    targets: [{ trial, patch: "p1" }],
    from: [],
    method: "pad",
    planned: { coat: 1 },
  };
  const roughly = { about: [trial], remembered: true, happenedKnownTo: "hour" } as const;
  pen.write("2026-10-14T10:00:00.000Z", "layer-applied", body, roughly, "2026-10-14T20:00:00.000Z");
  const second = due().find((c) => c.coat === 2);
  // Common practice: an hour between padded coats; "about ten" may have been half past.
  expect(second?.patches).toMatchObject([{ code: "K7", dueMs: atMs("11:30"), lastIsRough: true }]);
});

test("one board has its own share of each coat, due when its own first patch is", () => {
  const { due, coat } = withTrial();
  coat("10:00", ["p1", "p2"], 1);
  coat("10:30", ["p3"], 1);
  const here = (board: string) => coatsOnBoard(due(), board).map((c) => [c.coat, codesOf(c), c.dueMs]);
  expect(here("b1")).toEqual([[2, "K7 R4", atMs("11:00")]]);
  expect(here("b2")).toEqual([
    [1, "N3", null],
    [2, "T2", atMs("11:30")],
  ]);
  expect(here("b3")).toEqual([]);
});

test("without the key all patches are one coat, in the order drawn for it", () => {
  const { due, coat } = withTrial();
  expect(said(due())).toEqual([[1, null, "T2 R4 N3 K7"]]);
  expect(due()[0]?.dueMs).toBeNull();
  coat("10:00", ["p1", "p2", "p3", "p4"], 1);
  expect(said(due())).toEqual([[2, null, "N3 K7 R4 T2"]]);
});

test("with the key each jar is a coat of its own, and what it is may not be written while the key is shut", () => {
  const { due, write, trial } = withTrial();
  expect(said(due(key))).toEqual([
    [1, "ethanol · jar 1", "T2 K7"],
    [1, "isopropanol · jar 1", "R4 N3"],
  ]);
  expect(due(key)[0]).toMatchObject({ keyOpen: false, jar: { recipe: { alcohol: "ethanol" } } });
  write("11:00", "key-opened", { key: keyText }, [trial]);
  expect(due()[0]).toMatchObject({ keyOpen: true, jar: { name: "ethanol · jar 1" } });
});

// Common practice: an hour between padded coats, two between brushed ones, unless the person has other waits.
test("the next coat is due when the wait after the last layer is over, by how it was put on", () => {
  const { due, coat, write } = withTrial();
  coat("10:00", ["p1", "p2"], 1);
  coat("10:30", ["p3", "p4"], 1, "brush");
  const second = due().find((c) => c.coat === 2);
  expect(second?.patches.map((p) => [p.code, p.dueMs])).toEqual([
    ["N3", atMs("12:30")],
    ["K7", atMs("11:00")],
    ["R4", atMs("11:00")],
    ["T2", atMs("12:30")],
  ]);
  expect(second?.dueMs).toBe(atMs("11:00"));
  write("10:40", "default-changed", { name: "wait-after-padding-minutes", value: 45, was: 60 });
  expect(due().find((c) => c.coat === 2)?.dueMs).toBe(atMs("10:45"));
});

test("coats part when some patches are ahead, and end when all have what was planned", () => {
  const { due, coat, notebook } = withTrial();
  coat("10:00", ["p1"], 1);
  expect(said(soonestFirst(due()))).toEqual([
    [1, null, "T2 R4 N3"],
    [2, null, "K7"],
  ]);
  coat("10:05", ["p2", "p3", "p4"], 1);
  coat("12:00", ["p1", "p2", "p3", "p4"], 2);
  expect(due()).toEqual([]);
  expect(trialsAtBench(notebook)).toHaveLength(1);
});

test("a struck coat is due again; a patch that was left out is not asked for", () => {
  const { due, coat, write, trial } = withTrial();
  const wrong = coat("10:00", ["p1", "p2", "p3", "p4"], 1);
  write("10:01", "struck", {}, [trial], [wrong]);
  write("10:02", "patch-left-out", { patch: "p4", why: "dropped", keyOpen: false }, [trial]);
  expect(said(due())).toEqual([[1, null, "T2 R4 K7"]]);
});

test("a coat that two entries claim on one patch is doubled until one is struck", () => {
  const { notebook, coat, write, trial } = withTrial();
  const doubled = () => doubledCoats(notebook, trial).map((d) => [d.coat, d.codes, d.entries.length]);
  coat("10:00", ["p1", "p2"], 1);
  const again = coat("10:02", ["p2", "p3"], 1);
  expect(doubled()).toEqual([[1, ["R4"], 2]]);
  write("10:05", "struck", {}, [trial], [again]);
  expect(doubled()).toEqual([]);
});

test("a sitting stays open until it is ended", () => {
  const { notebook, write } = desk();
  expect(openSitting(notebook)).toBeNull();
  const id = write("18:00", "sitting-begun", {});
  expect(openSitting(notebook)).toEqual({ id, beganMs: atMs("18:00") });
  write("20:00", "sitting-ended", { minutes: 120 }, [id]);
  expect(openSitting(notebook)).toBeNull();
});

test("a jar is looked at again after an hour, then after half as long again as it has stood", () => {
  const { notebook, write } = desk();
  const grams = (g: number) => ({ typed: `${g} g`, unit: "g", si: g / 1000 });
  const jar = write("08:00", "batch-mixed", {
    code: "S1",
    resins: [{ name: "seedlac", amount: grams(50) }],
    solvents: [{ name: "ethanol", amount: grams(200) }],
  });
  const due = () => jarsToLookAt(notebook).map((one) => [one.code, one.dueMs]);
  expect(due()).toEqual([["S1", atMs("09:00")]]);
  write("12:00", "batch-looked-at", { undissolved: "some" }, [jar]);
  expect(due()).toEqual([["S1", atMs("14:00")]]);
  write("14:00", "batch-looked-at", { undissolved: "none" }, [jar]);
  expect(due()).toEqual([]);
});

// Dew point of 20 °C at 50 %: 9.27 °C (check values, psychrometrics). General paint rule: 3 °C above it.
test("the wood's distance from the dew point, with its give or take", () => {
  const { notebook, write } = desk();
  const degrees = (c: number) => ({ typed: `${c} °C`, unit: "degC", si: kelvinFromCelsius(celsius(c)) });
  const air = (time: string, wood: number) =>
    write(time, "air-read", {
      temperature: degrees(20),
      relativeHumidity: { typed: "50 %", unit: "percent", si: 0.5 },
      wood: degrees(wood),
    });
  air("18:00", 13.5);
  const view = airView(notebook);
  expect(view?.dew?.margin).toBeCloseTo(13.5 - 9.27, 1);
  expect(view?.dew?.state).toBe("enough");
  expect(view?.dew?.giveOrTake).toBeGreaterThan(0.5);
  air("19:00", 11);
  expect(airView(notebook)?.dew?.state).toBe("thin");
  air("19:30", 9);
  expect(airView(notebook)?.dew?.state).toBe("wet");
});

test("a piece waits for the first coat of its plan that is not on it", () => {
  const { notebook, write } = desk();
  const piece = write("08:00", "piece-described", {
    name: "Chairs",
    area: { typed: "4 m²", unit: "m2", si: 4 },
  });
  const step = (what: "coat" | "de-nib", day: string, at: string) => ({ step: at, what, day, at });
  write(
    "08:10",
    "piece-scheduled",
    {
      recipe: { cutLbPerGal: 1.5, coats: 2, method: "brush" },
      steps: [
        step("coat", "2026-10-14", "18:00"),
        step("de-nib", "2026-10-14", "20:00"),
        step("coat", "2026-10-15", "18:00"),
      ],
      millilitresPerM2PerCoat: 114,
    },
    [piece],
  );
  expect(pieceCoats(notebook)).toEqual([{ piece, name: "Chairs", coat: 1, day: "2026-10-14", at: "18:00" }]);
  const on = (coat: number) =>
    write(
      "18:30",
      "layer-applied",
      { sort: "coat", targets: [{ piece }], from: [], method: "brush", planned: { coat } },
      [piece],
    );
  on(1);
  expect(pieceCoats(notebook)).toMatchObject([{ coat: 2, day: "2026-10-15" }]);
  on(2);
  expect(pieceCoats(notebook)).toEqual([]);
});
