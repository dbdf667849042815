import { describe, expect, test } from "vitest";
import { adviceOf, dayPart, inDanger, isColdBoard, worstFirst } from "./blush-state.ts";

const blush = (margin: number, word: "unlikely" | "possible" | "likely") => ({
  margin,
  word,
  dewMargin: margin + 3,
});
const jars = [
  { id: "a", code: "A1", blush: blush(2, "unlikely") },
  { id: "b", code: "B1", blush: null },
  { id: "c", code: "C1", blush: blush(-4, "likely") },
  { id: "d", code: "D1", blush: { word: "unlikely", margin: null, dewMargin: null } },
  { id: "e", code: "E1", blush: blush(-1, "possible") },
] as const;

describe("the jars in one air", () => {
  test("the nearest to turning white stands first, what cannot be reckoned last", () => {
    expect(worstFirst(jars).map(({ code }) => code)).toEqual(["C1", "E1", "A1", "D1", "B1"]);
  });
  test("one that cannot be reckoned is in no danger that is known", () => {
    expect(inDanger(jars)).toBe(2);
  });
});

describe("adviceOf(helps)", () => {
  const warm = { change: "warmer wood", woodC: 17.2, blush: "unlikely", blushMarginC: 0 } as const;
  const dry = { change: "drier air", relativeHumidity: 0.587, blush: "unlikely", blushMarginC: 0 } as const;
  const thin = { change: "thinner coat", wetUm: 28, blush: "unlikely", blushMarginC: 1 } as const;

  test("to warm the wood comes first, rounded to the safe side", () => {
    expect(adviceOf([dry, warm])).toEqual({ what: "warm", to: 18 });
    expect(adviceOf([dry])).toEqual({ what: "dry", to: 58 });
  });
  test("what is not enough alone is no advice", () => {
    expect(adviceOf([{ ...thin, blush: "possible" }])).toEqual({ what: "wait", to: null });
    expect(adviceOf([thin])).toEqual({ what: "thin", to: null });
  });
});

test("a board is cold that is more than a degree colder than the air", () => {
  expect(isColdBoard({ temperature: 290, wood: 288.9, relativeHumidity: 0.5 })).toBe(true);
  expect(isColdBoard({ temperature: 290, wood: 289.1, relativeHumidity: 0.5 })).toBe(false);
});

test("tonight begins at five", () => {
  expect([dayPart("16:59"), dayPart("17:00"), dayPart("03:30"), dayPart("08:00")]).toEqual([
    "now",
    "tonight",
    "tonight",
    "now",
  ]);
});
