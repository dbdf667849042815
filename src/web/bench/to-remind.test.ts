import { expect, test } from "vitest";
import type { DueCoat, DuePatch } from "../../core/views/bench.ts";
import { toRemind } from "./to-remind.ts";

const nowMs = Date.parse("2026-10-14T17:42:00Z");
const min = 60_000;
const patch = (code: string, minutes: number | null) =>
  ({ code, dueMs: minutes === null ? null : nowMs + minutes * min }) as DuePatch; // what is read of it here
const coat = (patches: readonly DuePatch[], jar: string) =>
  ({ trial: "t", coat: 3, jar: { name: jar }, patches }) as unknown as DueCoat; // as above

test("a coat is told of by its next patches and their codes; nothing of what is ready, and no jar", () => {
  const half = coat([patch("K7", -1), patch("N2", 30), patch("R4", 30), patch("T2", 50)], "ethanol · jar 1");
  const bare = coat([patch("A4", null)], "isopropanol · jar 1");
  const told = toRemind([half, bare], [], nowMs);
  expect(told).toEqual([{ key: "t/3/", atMs: nowMs + 30 * min, says: "Coat 3 may go on: N2 R4" }]);
});

test("jars to look at and pieces are told of at their time", () => {
  const none = { coat: null, jar: null, piece: null };
  const told = toRemind(
    [],
    [
      { ...none, atMs: nowMs + min, jar: { jar: "j", code: "S1", dueMs: nowMs + min, lastSeen: null } },
      {
        ...none,
        atMs: nowMs + 2 * min,
        piece: { piece: "c", name: "Chairs", coat: 2, day: "2026-10-14", at: null },
      },
    ],
    nowMs,
  );
  expect(told.map(({ says }) => says)).toEqual(["Look at jar S1 again", "Coat 2 on Chairs"]);
});
