import { expect, test } from "vitest";
import { shopClock } from "../../core/schedule/shop-clock.ts";
import { stripRows } from "./strip-rows.ts";
import { surfaceSigns, surfacesInShort, surfacesOf, worksTogether } from "./surface-names.ts";

test.each([
  [
    ["underside", "top"],
    ["U", "T"],
  ],
  [
    ["chair 1", "chair 2", "chair 12"],
    ["1", "2", "12"],
  ],
  [
    ["front", "foot"],
    ["1", "2"],
  ], // one letter for both would tell neither
])("signs for %s", (names, signs) => {
  expect([...surfaceSigns(names).values()]).toEqual(signs);
});

test.each([
  [["chair 1", "chair 2", "chair 3"], "chair 1 to chair 3"],
  [["chair 1", "chair 2"], "chair 1 and chair 2"],
  [["door 9", "door 10", "door 11", "door 14", "frame"], "door 9 to door 11, door 14 and frame"],
  [["leg 1", "arm 2", "leg 3"], "leg 1, arm 2 and leg 3"],
])("%s in short", (names, short) => {
  expect(surfacesInShort(names)).toBe(short);
});

test("works are said once, with what they are done on", () => {
  const on = (name: string, surface?: string) => ({ name, surface });
  expect(worksTogether([on("sand", "a"), on("sand", "b"), on("coat 1", "a"), on("rub out")], 2)).toEqual([
    "sand on all of it",
    "coat 1 on a",
    "rub out",
  ]);
});

test("evenings in the order of time, two at work at once under one another", () => {
  const step = (n: number, surface: string, day: string, at: string) => ({
    ...{ step: String(n), what: "coat" as const, surface, day: `2026-10-${day}`, at, minutes: 10 },
  });
  const steps = [
    step(1, "a", "05", "18:00"),
    step(2, "b", "06", "18:00"),
    step(3, "a", "05", "20:00"),
    step(4, "b", "06", "18:05"),
  ];
  const rows = stripRows(steps, shopClock("Europe/Berlin"));
  expect(surfacesOf(steps)).toEqual(["a", "b"]);
  expect(rows.map(({ day, blocks }) => [day, ...blocks.map(({ hand }) => hand)])).toEqual([
    ["2026-10-05", 0, 0],
    ["2026-10-06", 0, 1],
  ]);
});
