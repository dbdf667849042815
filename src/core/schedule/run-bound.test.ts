import { expect, test } from "vitest";
import { run } from "../../../test/run-calculation.ts";

// By hand: each board takes three evenings in a row, since after one evening the coat may wait for the next only. On evening 3
// every board begun on evenings 1 to 3 is at work, so that evenings 3 and 6 must hold a coat of each of the five boards.
test("boards that take evenings in a row are not done before enough evenings have seen one coat of each", () => {
  const coats = [0, 1, 2];
  const boards = ["a", "b", "c", "d", "e"];
  const given = {
    tasks: boards.flatMap((b) => coats.map((c) => ({ task: `${b}${c}`, minutes: 20, hands: true }))),
    waits: boards.flatMap((b) =>
      coats
        .slice(1)
        .map((c) => ({ from: `${b}${c - 1}`, to: `${b}${c}`, leastMinutes: 720, mostMinutes: 1500 })),
    ),
    windows: Array.from({ length: 9 }, (_, d) => [`2026-10-0${d + 1}T18:00`, `2026-10-0${d + 1}T19:00`]),
    zone: "UTC",
  };
  expect(run("schedule", { ...given, limitMs: 20 })).toMatchObject({
    finish: "2026-10-06T18:40",
    lowerBound: "2026-10-06T18:40",
    sessions: 6,
    provenBest: "all goals",
  });
});
