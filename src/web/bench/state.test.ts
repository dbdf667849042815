import { expect, test } from "vitest";
import type { DueCoat, DuePatch } from "../../core/views/bench.ts";
import { zoneOffset } from "../words/zone-offset.ts";
import {
  chosenPatches,
  coatKey,
  comingUp,
  firstStep,
  inQuestion,
  instantMeant,
  instantOfDay,
  isFresh,
  layerOf,
  readWait,
  sortedByTime,
} from "./state.ts";

const now = "2026-10-14T17:42:00.000Z";
const nowMs = Date.parse(now);
const min = 60_000;

const patch = (code: string, dueMs: number | null): DuePatch => ({
  patch: `p-${code}`,
  code,
  board: "b1",
  boardId: "board-1",
  wood: "cherry",
  coats: 2,
  lastAtMs: null,
  lastIsRough: false,
  lastLayer: null,
  dueMs,
});
const coat = (jar: string, patches: readonly DuePatch[], more: Partial<DueCoat> = {}): DueCoat => ({
  trial: "trial-1",
  question: "Which alcohol?",
  coat: 3,
  coats: 4,
  method: "pad",
  jar: { name: jar, batch: `batch-${jar}`, recipe: {} },
  keyOpen: false,
  patches,
  dueMs: patches[0]?.dueMs ?? null,
  ...more,
});

const ready = coat("L4", [patch("K7", nowMs - min), patch("N2", nowMs + 30 * min)]);
const waiting = coat("P4", [patch("R4", nowMs + 58 * min)]);

test("a coat is due when one of its patches is ready; the picked one goes before the first", () => {
  const list = sortedByTime([ready, waiting], nowMs);
  expect(list).toEqual({ now: [ready], later: [waiting] });
  expect(inQuestion(list, undefined)).toBe(ready);
  expect(inQuestion(list, coatKey(waiting))).toBe(waiting);
  expect(inQuestion(list, "gone")).toBe(ready);
});

test("patches that still wait are left out until they are tapped, and the others until they are tapped away", () => {
  const codes = (tapped: readonly string[]) =>
    chosenPatches(ready, new Set(tapped), nowMs).map((p) => p.code);
  expect(codes([])).toEqual(["K7"]);
  expect(codes(["p-N2"])).toEqual(["K7", "N2"]);
  expect(codes(["p-K7"])).toEqual([]);
});

test("no jar is written beside the patches while the key is shut", () => {
  const shut = layerOf(ready, ready.patches, "pad");
  expect(shut.body.from).toEqual([]);
  expect(shut.about).toEqual(["trial-1", "board-1"]);
  const open = layerOf({ ...ready, keyOpen: true }, ready.patches.slice(0, 1), "brush");
  expect(open.body).toEqual({
    sort: "coat",
    targets: [{ trial: "trial-1", patch: "p-K7" }],
    from: [{ batch: "batch-L4" }],
    method: "brush",
    planned: { coat: 3 },
  });
  expect(open.about).toContain("batch-L4");
});

test("what comes next stands in order of time, within a week", () => {
  const jar = { jar: "j", code: "S1", dueMs: nowMs + 43 * min, lastSeen: "some" };
  const far = { jar: "k", code: "S2", dueMs: nowMs + 20000 * min, lastSeen: null };
  const chairs = {
    piece: "c",
    name: "Chairs",
    coat: 2,
    day: "2026-10-14",
    at: "20:00",
    dueMs: nowMs + 18 * min,
  };
  expect(
    comingUp([waiting], [far, jar], [chairs], nowMs).map(
      (one) => one.piece?.name ?? one.jar?.code ?? one.coat?.jar?.name,
    ),
  ).toEqual(["Chairs", "S1", "P4"]);
});

test("a time set back, and a time of day in the shop's zone; one still to come was yesterday", () => {
  const berlin = (instant: string) => zoneOffset(instant, "Europe/Berlin");
  expect(instantMeant({ ago: 10 }, now, berlin)).toBe("2026-10-14T17:32:00.000Z");
  expect(instantMeant({ clock: "19:30" }, now, berlin)).toBe("2026-10-14T17:30:00.000Z");
  expect(instantMeant({ clock: "7.05" }, now, berlin)).toBe("2026-10-14T05:05:00.000Z");
  expect(instantMeant({ clock: "23:10" }, now, berlin)).toBe("2026-10-13T21:10:00.000Z");
  expect(instantMeant({ clock: "25:10" }, now, berlin)).toBeUndefined();
  expect(instantMeant({ clock: "soon" }, now, berlin)).toBeUndefined();
});

test("a planned day and hour are those of the shop's zone", () => {
  const berlin = (instant: string) => zoneOffset(instant, "Europe/Berlin");
  expect(new Date(instantOfDay("2026-10-14", "20:00", berlin)).toISOString()).toBe(
    "2026-10-14T18:00:00.000Z",
  );
  expect(new Date(instantOfDay("2026-10-26", "20:00", berlin)).toISOString()).toBe(
    "2026-10-26T19:00:00.000Z",
  );
});

test("a wait is whole minutes", () => {
  expect(["60", " 45 min", "1", "10000"].map(readWait)).toEqual([60, 45, 1, 10000]);
  expect(["0", "10001", "an hour", "-5", ""].map(readWait)).toEqual([
    undefined,
    undefined,
    undefined,
    undefined,
    undefined,
  ]);
});

test("an old reading of the air is no reading", () => {
  expect(isFresh("2026-10-14T12:00:00Z", nowMs)).toBe(true);
  expect(isFresh("2026-10-14T11:40:00Z", nowMs)).toBe(false);
});

test("an empty bench leads on from what is there", () => {
  expect(firstStep({ materials: 0, jars: 0 })).toBe("shelf");
  expect(firstStep({ materials: 2, jars: 0 })).toBe("jars");
  expect(firstStep({ materials: 2, jars: 1 })).toBe("trials");
});
