import { expect, test } from "vitest";
import { figuresOf } from "./figures.ts";
import { turned, type VerdictPair } from "./questions.ts";
import { headline, sayMore, sayPair } from "./saying.ts";

const gloss = { unit: "gloss units", more: "glossier", less: "duller", shares: false };
const pair = (
  verdict: VerdictPair["verdict"],
  difference: number,
  interval: readonly [number, number],
  [a, b] = ["1½ lb", "1 lb"],
): VerdictPair => ({
  a: a ?? "",
  b: b ?? "",
  difference,
  interval,
  verdict,
  directionSure: interval[0] > 0 || interval[1] < 0,
});

test("each word has its sentence", () => {
  expect(sayPair(pair("different", 9.2, [6.1, 12.3]), gloss, 5)).toBe(
    "1½ lb against 1 lb: 9 gloss units glossier, somewhere from 6 to 12. Five matters to you.",
  );
  expect(sayPair(pair("equal", 1.1, [-2.2, 4.4]), gloss, 5)).toBe(
    "1½ lb against 1 lb: no difference that matters was seen, and one of 5 would have been.",
  );
  expect(sayPair(pair("unclear", 3.1, [-2.2, 8.4]), gloss, 5)).toBe(
    "1½ lb against 1 lb: it may be 2 duller or 8 glossier.",
  );
  expect(sayPair(pair("unclear", 4.1, [0.2, 8.4]), gloss, 5)).toBe(
    "1½ lb is glossier than 1 lb, but it may be by less than the 5 that matters: from 0.2 to 8.4.",
  );
});

test("the numbers never contradict the word: a jaw just inside the band stays inside when rounded", () => {
  expect(figuresOf(pair("equal", 1, [-3.01, 4.98]), 5, false)).toMatchObject({
    difference: { size: "1" },
    high: { size: "4.98" },
  });
});

test("shares are told in a hundred", () => {
  expect(figuresOf(pair("different", 0.6, [0.32, 0.81]), 0.3, true)).toMatchObject({
    difference: { size: "60" },
    low: { size: "32" },
    matters: "30",
  });
});

test("the larger stands first, with its interval turned round", () => {
  expect(turned(pair("unclear", -3, [-8, 2]))).toMatchObject({
    a: "1 lb",
    b: "1½ lb",
    difference: 3,
    interval: [-2, 8],
  });
});

test("the headline says what is known first, and what is left open", () => {
  const different = pair("different", 9, [6, 12]);
  const equal = pair("equal", 1, [-2, 4], ["denatured", "ethanol"]);
  const unclear = pair("unclear", 3, [-2, 8], ["ethanol", "isopropanol"]);
  expect(headline([different], gloss, 5)).toBe("1½ lb is glossier than 1 lb.");
  expect(headline([different, equal, unclear], gloss, 5)).toBe(
    "1½ lb is glossier than 1 lb. Between denatured and ethanol no difference that matters is left.",
  );
  expect(headline([equal], gloss, 5)).toBe(
    "No difference that matters was seen, and one as large as 5 gloss units would have been.",
  );
  expect(headline([unclear], gloss, 5)).toBe("There is not enough to tell yet.");
  expect(headline([], gloss, 5)).toBe("There is not enough to tell yet.");
});

test("what would settle it: the smaller count, or that nothing would", () => {
  expect(sayMore({ jars: 4, boards: 2 })).toBe("Two more boards would settle it.");
  expect(sayMore({ jars: 1, boards: null })).toBe("One more jar of each would settle it.");
  expect(sayMore({ jars: null, boards: null })).toBe("Not even sixty more would be sure to settle it.");
  expect(sayMore({ jars: 0, boards: 0 })).toBe("");
});
