import { expect, test } from "vitest";
import { randomFromSeed, randomIndex, shuffled } from "../random.ts";
import { countingOrder } from "./counting-order.ts";

// The outside source is the sort of the language, which keeps the order of like ones (ECMA-262, Array.prototype.sort).
test("100 drawn lists come in the order that the stable sort of the language gives", () => {
  const random = randomFromSeed("keys");
  for (let round = 0; round < 100; round++) {
    const n = randomIndex(random, 40);
    const keys = Int32Array.from({ length: n }, () => randomIndex(random, 1 + randomIndex(random, 60)));
    const tasks = shuffled([...keys.keys()], random);
    const sorted = [...tasks].sort((a, b) => (keys[a] as number) - (keys[b] as number));
    expect([...countingOrder(keys, Int32Array.from(tasks))]).toEqual(sorted);
  }
});
